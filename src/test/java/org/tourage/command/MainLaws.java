package org.tourage.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class MainLaws {
  private static final List<String> NASTY =
      List.of(
          "",
          "0",
          "1",
          "-1",
          "999999",
          "1000000",
          "1e9",
          "0 g",
          "1 g",
          "0.001 g",
          "5000 kg",
          "1 mg",
          "0 %",
          "99.9 %",
          "100 %",
          "-1 %",
          "150 %",
          "0 mm",
          "0.01 mm",
          "1 mm",
          "9999 m",
          "0 K",
          "-300 °C",
          "-20 °C",
          "60 °C",
          "5000 °F",
          "20-22 °C",
          "letter",
          "book, book, book, book, book, book, book, book",
          "zigzag 12, zigzag 12, zigzag 12",
          "half",
          "us",
          "both",
          "day 1 00:00",
          "24:00",
          "bread flour",
          "water",
          "rye flour",
          "½",
          "1/3",
          "\u0663",
          "400 °F 1 min, ",
          ",");

  @Provide
  Arbitrary<Setting<?>> settings() {
    return Arbitraries.of(Settings.all());
  }

  @Provide
  Arbitrary<String> values() {
    return Arbitraries.oneOf(Arbitraries.of(NASTY), Arbitraries.strings().ofMaxLength(8));
  }

  @Property(tries = 1500)
  void anySettingWithAnyValueGivesASheetOrComplaintsAndCode2(
      @ForAll("settings") Setting<?> a,
      @ForAll("values") String first,
      @ForAll("settings") Setting<?> b,
      @ForAll("values") String second) {
    MainTest.Result result = MainTest.run("--" + a.key(), first, "--" + b.key(), second);
    if (result.code() == 0) {
      assertThat(result.out())
          .contains("At a glance")
          .doesNotContain("NaN")
          .doesNotContain("Infinity");
      assertThat(result.err()).isEmpty();
    } else {
      assertThat(result.code()).isEqualTo(2);
      assertThat(result.out()).isEmpty();
      assertThat(result.err().lines()).isNotEmpty().allMatch(l -> l.startsWith("tourage: "));
    }
  }
}

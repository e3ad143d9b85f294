package org.tourage.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class CsvTest {
  private static List<Map<String, String>> read(String text) {
    return Csv.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void quotesCommasAndDoubledQuotesAreRead() {
    List<Map<String, String>> rows = read("a,b\n\"x, \"\"y\"\"\",2\n\n,\"two\nlines\"\n");
    assertThat(rows).hasSize(2);
    assertThat(rows.get(0)).containsEntry("a", "x, \"y\"").containsEntry("b", "2");
    assertThat(rows.get(1)).containsEntry("a", "").containsEntry("b", "two\nlines");
  }

  @Test
  void aShortRecordIsRefused() {
    assertThatThrownBy(() -> read("a,b\n1\n")).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void numbersArePlainText() {
    assertThat(Numbers.significant(1234567, 3)).isEqualTo("1230000");
    assertThat(Numbers.significant(0, 3)).isEqualTo("0");
    assertThat(Numbers.decimals(-0.001, 1)).isEqualTo("0");
    assertThat(Numbers.fixed(-0.001, 1)).isEqualTo("0.0");
    assertThat(Numbers.fixed(2.345, 1)).isEqualTo("2.3");
    assertThat(Numbers.cleanProduct(3, 0.1)).isEqualTo(0.3);
  }
}

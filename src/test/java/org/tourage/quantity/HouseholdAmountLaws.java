package org.tourage.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.tourage.advice.BakeryException;

/**
 * Fuzzes the reader against an oracle that shares no code with it: regular expressions and
 * BigInteger ratios over common denominators.
 */
class HouseholdAmountLaws {
  /** Micrograms, nanolitres and milliseconds make all factors of the oracle whole numbers. */
  private static final Map<String, BigDecimal> ORACLE_UNITS =
      Map.ofEntries(
          Map.entry("g", new BigDecimal("0.001")),
          Map.entry("kg", new BigDecimal("1")),
          Map.entry("oz", new BigDecimal("0.028349523125")),
          Map.entry("lb", new BigDecimal("0.45359237")),
          Map.entry("ml", new BigDecimal("0.000001")),
          Map.entry("cup", new BigDecimal("0.0002365882365")),
          Map.entry("cups", new BigDecimal("0.0002365882365")),
          Map.entry("tbsp", new BigDecimal("0.00001478676478125")),
          Map.entry("tsp", new BigDecimal("0.00000492892159375")),
          Map.entry("h", new BigDecimal("3600")),
          Map.entry("min", new BigDecimal("60")));

  private static final String VULGAR = "½¼¾⅓⅔⅛⅜⅝⅞";
  private static final String[] VULGAR_TEXT = {
    "1/2", "1/4", "3/4", "1/3", "2/3", "1/8", "3/8", "5/8", "7/8"
  };
  private static final Pattern ORACLE_LINE =
      Pattern.compile("\\s*([0-9./ " + VULGAR + "]+?)\\s*([A-Za-z]+)\\.?\\s*");

  /** Numerator and denominator. */
  private record Ratio(BigInteger n, BigInteger d) {
    Ratio plus(Ratio o) {
      return new Ratio(n.multiply(o.d).add(o.n.multiply(d)), d.multiply(o.d));
    }
  }

  private static Optional<Ratio> oracleNumber(String text) {
    String t = text.strip();
    for (int i = 0; i < VULGAR.length(); i++) {
      t = t.replace(String.valueOf(VULGAR.charAt(i)), " " + VULGAR_TEXT[i]);
    }
    t = t.strip();
    Matcher decimal = Pattern.compile("([0-9]*)(?:\\.([0-9]+))?").matcher(t);
    if (!t.isEmpty() && decimal.matches()) {
      String digits = decimal.group(2) == null ? "" : decimal.group(2);
      String whole = decimal.group(1).isEmpty() ? "0" : decimal.group(1);
      return Optional.of(
          new Ratio(new BigInteger(whole + digits), BigInteger.TEN.pow(digits.length())));
    }
    Matcher mixed = Pattern.compile("(?:([0-9]+)\\s+)?([0-9]+)\\s*/\\s*([0-9]+)").matcher(t);
    if (mixed.matches() && new BigInteger(mixed.group(3)).signum() > 0) {
      Ratio fraction = new Ratio(new BigInteger(mixed.group(2)), new BigInteger(mixed.group(3)));
      return Optional.of(
          mixed.group(1) == null
              ? fraction
              : fraction.plus(new Ratio(new BigInteger(mixed.group(1)), BigInteger.ONE)));
    }
    return Optional.empty();
  }

  private static Optional<Ratio> oracle(String text) {
    Matcher line = ORACLE_LINE.matcher(text);
    if (!line.matches()) {
      return Optional.empty();
    }
    BigDecimal factor = ORACLE_UNITS.get(line.group(2).toLowerCase(java.util.Locale.ROOT));
    if (factor == null) {
      return Optional.empty();
    }
    return oracleNumber(line.group(1))
        .map(
            r ->
                new Ratio(
                    r.n.multiply(
                        factor
                            .unscaledValue()
                            .multiply(BigInteger.TEN.pow(Math.max(0, -factor.scale())))),
                    r.d.multiply(BigInteger.TEN.pow(Math.max(0, factor.scale())))));
  }

  private static void assertSame(HouseholdAmount read, Ratio expected) {
    Fraction base = read.low().times(read.unit().orElseThrow().exactFactor().orElseThrow());
    assertThat(base.numerator().multiply(expected.d))
        .isEqualTo(base.denominator().multiply(expected.n));
  }

  @Provide
  Arbitrary<String> wellFormed() {
    Arbitrary<String> whole = Arbitraries.integers().between(0, 99999).map(String::valueOf);
    Arbitrary<String> decimal =
        Combinators.combine(whole, whole)
            .as((a, b) -> a + "." + b)
            .filter(text -> !text.matches("[1-9][0-9]{0,2}\\.[0-9]{3}"));
    Arbitrary<String> slash =
        Combinators.combine(whole, Arbitraries.integers().between(1, 64)).as((a, b) -> a + "/" + b);
    Arbitrary<String> proper =
        Arbitraries.integers()
            .between(2, 64)
            .flatMap(d -> Arbitraries.integers().between(1, d - 1).map(n -> n + "/" + d));
    Arbitrary<String> mixed = Combinators.combine(whole, proper).as((a, b) -> a + " " + b);
    Arbitrary<String> vulgar =
        Combinators.combine(
                whole,
                Arbitraries.of(VULGAR.chars().mapToObj(c -> String.valueOf((char) c)).toList()))
            .as((a, b) -> a + b);
    Arbitrary<String> unit = Arbitraries.of(List.copyOf(ORACLE_UNITS.keySet()));
    return Combinators.combine(
            Arbitraries.oneOf(whole, decimal, slash, mixed, vulgar),
            Arbitraries.of("", " ", "  "),
            unit)
        .as((n, space, u) -> n + space + u);
  }

  @Property(tries = 2000)
  void everyWellFormedAmountHasTheValueOfTheOracle(@ForAll("wellFormed") String text) {
    assertSame(HouseholdAmount.parse(text), oracle(text).orElseThrow());
  }

  @Provide
  Arbitrary<String> damaged() {
    Arbitrary<Character> noise =
        Arbitraries.of(
            '0', '1', '5', '9', ' ', '.', ',', '/', '½', '⅔', '-', '+', 'g', 't', 'T', 'c', 'e',
            'm', '\'', '"', '°', 'F', '%', '⁄', '٣', '\u00a0', ':', 'x');
    return Combinators.combine(
            wellFormed(),
            Arbitraries.integers().between(0, 14),
            noise,
            Arbitraries.integers().between(0, 2))
        .as(
            (text, at, c, how) -> {
              int i = Math.min(at, text.length() - 1);
              return switch (how) {
                case 0 -> text.substring(0, i) + c + text.substring(i);
                case 1 -> text.substring(0, i) + c + text.substring(i + 1);
                default -> text.substring(0, i) + text.substring(i + 1);
              };
            });
  }

  /**
   * Whatever the damage: an error, or a value that the oracle agrees with or has a reason not to
   * know.
   */
  @Property(tries = 5000)
  void noDamagedAmountIsReadWithAWrongValue(@ForAll("damaged") String text) {
    HouseholdAmount read;
    try {
      read = HouseholdAmount.parse(text);
    } catch (BakeryException refused) {
      assertThat(refused).hasMessageContaining("\"");
      return;
    }
    Optional<Ratio> expected = oracle(text);
    if (expected.isPresent()) {
      assertSame(read, expected.get());
    } else {
      assertThat(outsideTheOracle(read, text)).as("read \"%s\" as %s", text, read).isTrue();
    }
  }

  /** Units, counts, ranges and sums that the oracle does not know; it can't judge those. */
  private static boolean outsideTheOracle(HouseholdAmount read, String text) {
    String word = text.replaceAll("[^A-Za-z]", "").toLowerCase(java.util.Locale.ROOT);
    boolean otherUnit = read.unit().isEmpty() || !ORACLE_UNITS.containsKey(word);
    boolean fractionSlash = text.indexOf('⁄') >= 0;
    boolean noBreakSpace = text.indexOf('\u00a0') >= 0;
    boolean sum = text.matches(".*[a-z].*[0-9].*") || text.indexOf('+') >= 0;
    return otherUnit || read.isRange() || sum || fractionSlash || noBreakSpace;
  }

  @Property(tries = 3000)
  void anyTextAtAllIsReadOrRefusedWithOneClearException(@ForAll String text) {
    try {
      HouseholdAmount read = HouseholdAmount.parse(text);
      assertThat(read.low()).isNotNull();
    } catch (BakeryException refused) {
      assertThat(refused.reason()).isEqualTo(BakeryException.Reason.UNREADABLE_TEXT);
    }
  }

  @Property
  void sumsOfUnitsAreExact(
      @ForAll @IntRange(min = 0, max = 50) int hours,
      @ForAll @IntRange(min = 0, max = 59) int minutes) {
    List<String> forms = new ArrayList<>();
    forms.add(hours + " h " + minutes + " min");
    forms.add(hours + "h" + minutes + "min");
    forms.add(hours + " hours + " + minutes + " minutes");
    for (String form : forms) {
      assertThat(Amounts.time(form).in(BakeryUnits.MINUTE)).isEqualTo(hours * 60.0 + minutes);
    }
  }

  @Property
  void whatIsPrintedIsReadBackTheSame(
      @ForAll @IntRange(min = 0, max = 500) int whole,
      @ForAll @IntRange(min = 0, max = 15) int sixteenths) {
    Fraction number = Fraction.of(whole * 16L + sixteenths, 16);
    HouseholdAmount read = HouseholdAmount.parse(number + " cups");
    assertThat(read.low()).isEqualTo(number);
    assertThat(HouseholdAmount.parse(read.toString()).low()).isEqualTo(number);
  }
}

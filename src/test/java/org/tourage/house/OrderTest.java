package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.tourage.formula.Formula;
import org.tourage.ingredient.Allergen;
import org.tourage.label.AllergenSummary;
import org.tourage.quantity.Amounts;

/** What comes out has one order, the same in every run of the machine. */
class OrderTest {
  private static final Pattern SHUFFLES =
      Pattern.compile(
          "(?<!Enum)Set\\.copyOf|(?<!\\w)Map\\.copyOf|toSet\\(|toUnmodifiableSet\\(|toConcurrentMap\\("
              + "|toUnmodifiableMap\\(|IdentityHashMap|identityHashCode|parallelStream\\(");

  /** A grouping or map of a stream names the map that it makes. */
  private static final Pattern COLLECTED = Pattern.compile("(?:groupingBy|toMap)\\((?s:.{0,300})");

  private static final Pattern HASHED =
      Pattern.compile(
          "(\\w+)\\s*=\\s*(?:new (?:java\\.util\\.)?Hash(?:Map|Set)<|new ConcurrentHashMap<"
              + "|(?:Map|Set)\\.(?:of|ofEntries)\\(\\s*[^)\\s])");

  private static List<Path> sources() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      return files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
    }
  }

  /** The places of a source at which an order that means nothing could come out. */
  static List<String> faults(String name, String source) {
    String code = source.replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("//[^\n]*", "");
    List<String> faults = new ArrayList<>();
    SHUFFLES.matcher(code).results().forEach(m -> faults.add(name + ": " + m.group()));
    Matcher collected = COLLECTED.matcher(code);
    while (collected.find()) {
      if (!collected.group().matches("(?s).*(?:LinkedHashMap|TreeMap|EnumMap).*")) {
        faults.add(name + ": " + collected.group().lines().findFirst().orElse(""));
      }
    }
    Set<String> hashed = new LinkedHashSet<>();
    HASHED.matcher(code).results().forEach(m -> hashed.add(m.group(1)));
    for (String map : hashed) {
      Pattern walked =
          Pattern.compile(
              "(?<![\\w.])(?:this\\.)?"
                  + map
                  + "\\s*\\.\\s*(?:entrySet|keySet|values|forEach|stream|iterator|toString)\\("
                  + "|: "
                  + map
                  + "\\)");
      walked.matcher(code).results().forEach(m -> faults.add(name + ": " + m.group()));
    }
    return faults;
  }

  @Test
  void noSourceWalksAHashedCollection() throws IOException {
    List<String> faults = new ArrayList<>();
    List<Path> sources = sources();
    assertThat(sources).hasSizeGreaterThan(200);
    for (Path file : sources) {
      faults.addAll(faults(file.getFileName().toString(), Files.readString(file)));
    }
    assertThat(faults).isEmpty();
  }

  @Test
  void theSearchFindsWhatItSearchesFor() {
    assertThat(faults("a", "contains = Set.copyOf(contains);")).hasSize(1);
    assertThat(faults("a", "x = EnumSet.copyOf(contains);")).isEmpty();
    assertThat(faults("a", "Map<A, B> m = new HashMap<>(); for (A a : m.keySet()) {}")).hasSize(1);
    assertThat(faults("a", "Map<A, B> m = new HashMap<>(); m.get(a);")).isEmpty();
    assertThat(faults("a", "Set<A> s = Set.of(a, b); for (A one : s) {}")).hasSize(1);
    assertThat(faults("a", "s.collect(Collectors.groupingBy(A::b));")).hasSize(1);
    assertThat(faults("a", "s.collect(groupingBy(A::b, LinkedHashMap::new, x));")).isEmpty();
  }

  @Test
  void allergensComeInTheOrderOfTheirList() {
    Formula formula =
        Formula.byPercent(
            "rich",
            f ->
                f.line("bread flour", Amounts.percent(100))
                    .line("whole milk", Amounts.percent(50))
                    .line("whole egg", Amounts.percent(10))
                    .line("sesame seeds", Amounts.percent(5))
                    .line("almonds", Amounts.percent(5)));
    List<Allergen> sorted = AllergenSummary.of(formula).contains().stream().sorted().toList();
    assertThat(sorted).hasSize(5);
    assertThat(AllergenSummary.of(formula).contains()).containsExactlyElementsOf(sorted);
  }
}

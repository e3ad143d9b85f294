package org.tourage.ingredient;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** How names are looked up and which names are near to one another. */
final class CatalogueNames {
  private static final int SHORTEST_PLURAL = 3;

  /** From this likeness on two words are taken for one another, misspelt. */
  private static final double SAME_WORD = 0.65;

  /** Below this likeness a name is no help. */
  private static final double WORTH_NAMING = 0.4;

  /** In a shorter name a wrong letter makes another word. */
  private static final int ONE_LETTER_FROM = 5;

  private static final int TWO_LETTERS_FROM = 9;

  private static final double SIDE_WORD_WEIGHT = 0.3;
  private static final double KIND_WEIGHT = 0.5;
  private static final double OTHER_KIND = 0.4;
  private static final double EXTRA_WORD = 0.04;

  /** What is done to a thing, or how warm it is, does not change what it is. */
  private static final Set<String> STATES =
      Set.of(
          ("warm lukewarm tepid cold hot boiling ice iced chilled cool cooled softened soft melted room"
                  + " temperature freshly ripe overripe organic pure finely roughly coarsely thinly"
                  + " lightly beaten toasted roasted peeled cored pitted seeded squeezed drained"
                  + " grated shredded diced cubed mashed crumbled minced quality good sachet")
              .split(" "));

  /** Words that say little about what a thing is. */
  private static final Set<String> SIDE_WORDS =
      Set.of(
          ("ground fresh dried dry white dark light brown whole raw unsweetened sweetened unsalted salted"
                  + " fine coarse powdered powder low full fat free plain natural extra large small"
                  + " medium old fashioned canned frozen of the and with in % liquid organic yellow red"
                  + " black green golden chopped sliced")
              .split(" "));

  /** Words that say which kind of thing it is; two kinds are not near to one another. */
  private static final Set<String> KINDS =
      Set.of(
          ("flour sugar milk yeast oil butter salt egg cream cheese chocolate seed nut syrup juice"
                  + " starch extract zest oat vinegar water honey spice margarine yogurt")
              .split(" "));

  private CatalogueNames() {}

  /** One form for all spellings of a name. */
  static String key(String name) {
    StringBuilder out = new StringBuilder(name.length());
    int wordStart = 0;
    int length = name.length();
    for (int i = 0; i <= length; i++) {
      char c = i == length ? ' ' : name.charAt(i);
      boolean separator = c <= ' ' || c == '-' || c == ',' || c == '\u00a0';
      if (!separator) {
        out.append(c == '\u2019' ? '\'' : Character.toLowerCase(c));
      } else if (out.length() > wordStart) {
        endWord(out, wordStart);
        out.append(' ');
        wordStart = out.length();
      }
    }
    out.setLength(Math.max(0, out.length() - 1));
    return out.toString();
  }

  private static void endWord(StringBuilder out, int wordStart) {
    int end = out.length();
    boolean plural =
        end - wordStart > SHORTEST_PLURAL
            && out.charAt(end - 1) == 's'
            && out.charAt(end - 2) != 's';
    if (plural) {
      out.setLength(end - 1);
    }
  }

  /** A name without the words for what was done to the thing; the same if there are none. */
  static String withoutState(String key) {
    StringBuilder out = new StringBuilder(key.length());
    for (String word : key.split(" ")) {
      if (!STATES.contains(word)) {
        out.append(out.length() == 0 ? "" : " ").append(word);
      }
    }
    return out.length() == 0 ? key : out.toString();
  }

  /**
   * The names nearest in meaning: words in common count, a word that says what the thing is more
   * than one that says how it is, and a thing of another kind hardly at all.
   *
   * @return ids, the nearest first, without doubles
   */
  static List<String> nearest(String wanted, Map<String, String> names) {
    String[] words = wanted.split(" ");
    record Scored(String key, String id, double likeness) {}
    List<Scored> scored = new ArrayList<>();
    for (Map.Entry<String, String> name : names.entrySet()) {
      double likeness = likeness(wanted, words, name.getKey());
      if (likeness >= WORTH_NAMING) {
        scored.add(new Scored(name.getKey(), name.getValue(), likeness));
      }
    }
    scored.sort(
        Comparator.comparingDouble(Scored::likeness)
            .reversed()
            .thenComparingInt(s -> s.key.length())
            .thenComparing(Scored::key));
    return scored.stream().map(Scored::id).distinct().toList();
  }

  private static double likeness(String wanted, String[] words, String candidate) {
    String[] others = candidate.split(" ");
    double sum = 0;
    double weights = 0;
    for (String word : words) {
      double weight = weight(word);
      weights += weight;
      double best = 0;
      for (String other : others) {
        double same = word.equals(other) ? 1 : likeness(word, other);
        best = Math.max(best, same >= SAME_WORD ? same : 0);
      }
      sum += weight * best;
    }
    double likeness = sum / weights - EXTRA_WORD * Math.max(0, others.length - words.length);
    double joined =
        words.length == others.length
            ? 0
            : likeness(wanted.replace(" ", ""), candidate.replace(" ", ""));
    boolean otherKind = kind(words) != null && kind(others) != null && !sameKind(words, others);
    return Math.max(likeness, joined >= 0.8 ? joined : 0) * (otherKind ? OTHER_KIND : 1);
  }

  private static double weight(String word) {
    return SIDE_WORDS.contains(word) ? SIDE_WORD_WEIGHT : KINDS.contains(word) ? KIND_WEIGHT : 1;
  }

  private static boolean sameKind(String[] a, String[] b) {
    for (String word : a) {
      for (String other : b) {
        if (KINDS.contains(word) && word.equals(other)) {
          return true;
        }
      }
    }
    return false;
  }

  private static @org.jspecify.annotations.Nullable String kind(String[] words) {
    for (String word : words) {
      if (KINDS.contains(word)) {
        return word;
      }
    }
    return null;
  }

  /** 1 for equal words, 0 for words with no letter in place, by edits. */
  private static double likeness(String a, String b) {
    int longest = Math.max(a.length(), b.length());
    if (longest - Math.min(a.length(), b.length()) > (1 - SAME_WORD) * longest) {
      return 0;
    }
    return 1 - (double) edits(a, b) / longest;
  }

  /**
   * Whether a name is a known one with a letter or two wrong. The first letter is hardly ever
   * wrong, and a number is a name of its own: type 55 is not type 65.
   */
  static boolean isMistyped(String name, String known) {
    int length = name.length();
    int most = length >= TWO_LETTERS_FROM ? 2 : length >= ONE_LETTER_FROM ? 1 : 0;
    return Math.abs(length - known.length()) <= most
        && length > 0
        && name.charAt(0) == known.charAt(0)
        && digits(name).equals(digits(known))
        && edits(name, known) <= most;
  }

  private static String digits(String name) {
    return name.replaceAll("[^0-9]", "");
  }

  /** How many letters must be put in, left out or changed. */
  static int edits(String a, String b) {
    int[] previous = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      previous[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] current = new int[b.length() + 1];
      current[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        current[j] = Math.min(previous[j - 1] + change, Math.min(previous[j], current[j - 1]) + 1);
      }
      previous = current;
    }
    return previous[b.length()];
  }
}

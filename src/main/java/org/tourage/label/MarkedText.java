package org.tourage.label;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.List;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Allergen;

/**
 * A text in which some words are to be emphasised. How (bold, capitals, colour) is left to whoever
 * renders it.
 *
 * @param text the text
 * @param spans where the words are, in order, without overlap
 */
public record MarkedText(String text, List<Span> spans) implements Serializable {

  /**
   * A word to be emphasised.
   *
   * @param start where it starts in the text, from 0
   * @param end where it ends, exclusive
   * @param allergen the allergen that it names
   */
  public record Span(int start, int end, Allergen allergen) implements Serializable {}

  /**
   * Copies the list and checks the places.
   *
   * @param text the text
   * @param spans where the words are
   */
  public MarkedText {
    requireNonNull(text, "text");
    spans = List.copyOf(spans);
    int last = 0;
    for (Span span : spans) {
      if (span.start < last || span.end <= span.start || span.end > text.length()) {
        throw new BakeryException(
            Reason.INCONSISTENT,
            "marked words lie in the text, in order",
            span + " in a text of " + text.length(),
            "give places from 0 to the length, without overlap");
      }
      last = span.end;
    }
  }

  /**
   * The text with its marked words in capitals, one way of emphasis that plain text can show.
   *
   * @return for example {@code bread flour (WHEAT), water, salt}
   */
  public String inCapitals() {
    StringBuilder out = new StringBuilder();
    int done = 0;
    for (Span span : spans) {
      out.append(text, done, span.start)
          .append(text.substring(span.start, span.end).toUpperCase(java.util.Locale.ROOT));
      done = span.end;
    }
    return out.append(text.substring(done)).toString();
  }

  /** The bare text. */
  @Override
  public String toString() {
    return text;
  }
}

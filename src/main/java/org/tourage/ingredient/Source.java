package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;

/**
 * Where a figure comes from.
 *
 * @param text the publication with its table or data-set number, or who gave the figure
 * @param provenance how far it can be traced
 */
public record Source(String text, Provenance provenance) implements Serializable {
  /** A figure that the user gave without saying more. */
  public static final Source USER = new Source("given by the user", Provenance.USER);

  /**
   * Checks that nothing is null.
   *
   * @param text the publication with its table or data-set number, or who gave the figure
   * @param provenance how far it can be traced
   */
  public Source {
    requireNonNull(text, "text");
    requireNonNull(provenance, "provenance");
  }

  @Override
  public String toString() {
    return provenance == Provenance.FETCHED
        ? text
        : text
            + " ("
            + provenance.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ')
            + ")";
  }
}

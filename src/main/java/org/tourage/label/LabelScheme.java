package org.tourage.label;

/** Whose rules a label follows. */
public enum LabelScheme {
  /**
   * The European Union: Regulation (EU) No 1169/2011 and the Commission's guidance on tolerances of
   * December 2012.
   */
  EU("European Union"),
  /** The United States: 21 CFR 101.9. */
  US("United States");

  private final String place;

  LabelScheme(String place) {
    this.place = place;
  }

  /**
   * Where it holds.
   *
   * @return for example {@code European Union}
   */
  public String place() {
    return place;
  }
}

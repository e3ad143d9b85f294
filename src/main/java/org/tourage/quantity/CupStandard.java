package org.tourage.quantity;

/**
 * Which kitchen's cups and spoons a text means. A word with its kitchen before it ("metric cup")
 * always means that one.
 */
public enum CupStandard {
  /** Cup 236.6 mL, tablespoon 14.8 mL, teaspoon 4.9 mL. */
  US_CUSTOMARY,
  /** Cup 240 mL, tablespoon 15 mL, teaspoon 5 mL, fluid ounce 30 mL: 21 CFR 101.9(b)(5)(viii). */
  US_LABELLING,
  /** Cup 250 mL, tablespoon 15 mL, teaspoon 5 mL. */
  METRIC,
  /** Pint 568 mL, fluid ounce 28.4 mL; imperial spoons were never one size, so they are refused. */
  IMPERIAL
}

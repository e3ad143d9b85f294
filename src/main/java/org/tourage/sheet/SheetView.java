package org.tourage.sheet;

/** What can be printed of a day. */
public enum SheetView {
  /** The bench sheet. */
  BENCH,
  /** Nutrition and ingredient list, drafts. */
  LABEL,
  /** What the batch costs. */
  COST,
  /** What must be bought. */
  SHOPPING,
  /** The recipe at five sizes. */
  SCALING
}

package org.tourage.advice;

/** How much a piece of advice matters. */
public enum Severity {
  /** Good to know; nothing need be changed. */
  NOTE,
  /** The result is possible but unwise: expect trouble at the bench. */
  WARNING,
  /** A person could be hurt or made ill. */
  SAFETY
}

package org.tourage.lamination;

/** What a band of the stack is made of. */
public enum Band {
  /** Dough. */
  DOUGH,
  /** Fat. */
  FAT
}

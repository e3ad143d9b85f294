package org.tourage.advice;

import java.util.List;

/** A result that explains itself. */
public interface Explained {

  /**
   * What is unwise about this result.
   *
   * @return the advice, in no promised order; empty if there is none
   */
  List<Advice> advice();

  /**
   * The worked solution.
   *
   * @return the lines that lead to the result
   */
  Working working();
}

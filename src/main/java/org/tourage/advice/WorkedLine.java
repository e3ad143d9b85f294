package org.tourage.advice;

import java.io.Serializable;
import java.util.Objects;

/**
 * One line of a worked solution, as an instructor writes it on a board.
 *
 * @param symbol what is computed, for example {@code T_water}
 * @param equation the equation in symbols
 * @param numbers the same with numbers and units, and the result
 * @param source where the equation comes from
 */
public record WorkedLine(String symbol, String equation, String numbers, String source)
    implements Serializable {

  /**
   * Checks that nothing is null.
   *
   * @param symbol what is computed, for example {@code T_water}
   * @param equation the equation in symbols
   * @param numbers the same with numbers and units, and the result
   * @param source where the equation comes from
   */
  public WorkedLine {
    Objects.requireNonNull(symbol, "symbol");
    Objects.requireNonNull(equation, "equation");
    Objects.requireNonNull(numbers, "numbers");
    Objects.requireNonNull(source, "source");
  }

  @Override
  public String toString() {
    return symbol + " = " + equation + " = " + numbers + "   [" + source + "]";
  }
}

package org.tourage.command;

import java.util.List;
import java.util.stream.Collectors;
import org.tourage.advice.BakeryException;
import org.tourage.advice.Problem;

/**
 * All that is wrong with the input, each with its place. {@link #problems()} has the lines, {@link
 * #complaints()} the options as well.
 */
public final class WrongInput extends BakeryException {
  private static final long serialVersionUID = 1L;

  /** What is wrong. */
  private final List<Complaint> complaints;

  WrongInput(List<Complaint> complaints) {
    super(
        complaints.stream()
            .map(c -> new Problem(c.origin().line(), c.origin().toString(), c.problem()))
            .toList(),
        complaints.stream().map(Complaint::toString).collect(Collectors.joining("\n")));
    this.complaints = List.copyOf(complaints);
  }

  /**
   * What is wrong.
   *
   * @return at least one complaint, in the order of the lines
   */
  public List<Complaint> complaints() {
    return complaints;
  }
}

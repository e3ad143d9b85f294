package org.tourage.command;

import java.util.List;
import java.util.stream.Collectors;

/** All that is wrong with the input, each with its place. */
public final class WrongInput extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What is wrong. */
  private final List<Complaint> complaints;

  WrongInput(List<Complaint> complaints) {
    super(complaints.stream().map(Complaint::toString).collect(Collectors.joining("\n")));
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

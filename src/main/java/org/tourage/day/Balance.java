package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/** A balance: its least step, and what it can carry. */
public final class Balance implements Serializable {
  private static final long serialVersionUID = 1L;

  private final Amount<Mass> step;
  private final @Nullable Amount<Mass> most;

  private Balance(Amount<Mass> step, @Nullable Amount<Mass> most) {
    this.step = requireNonNull(step, "step");
    this.most = most;
    if (!(step.value() > 0) || (most != null && most.compareTo(step) <= 0)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no balance is like this",
          "steps of " + step + (most == null ? "" : " up to " + most),
          "give a positive step and a larger load");
    }
  }

  /**
   * A balance that carries all that is put on it.
   *
   * @param step its least step, positive
   * @return the balance
   */
  public static Balance to(Quantity<Mass> step) {
    requireNonNull(step, "step");
    return new Balance(Given.mass("the step", step), null);
  }

  /**
   * The balance with a largest load.
   *
   * @param load what it can carry at most, above its step
   * @return the changed balance
   */
  public Balance upTo(Quantity<Mass> load) {
    requireNonNull(load, "load");
    return new Balance(step, Given.mass("the load", load));
  }

  /**
   * Its least step.
   *
   * @return the step
   */
  public Amount<Mass> step() {
    return step;
  }

  /**
   * What it can carry at most.
   *
   * @return the load, empty if it was not said
   */
  public Optional<Amount<Mass>> most() {
    return Optional.ofNullable(most);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Balance that && step.equals(that.step) && most().equals(that.most());
  }

  @Override
  public int hashCode() {
    return step.hashCode();
  }

  @Override
  public String toString() {
    return "steps of " + step + (most == null ? "" : " up to " + most);
  }
}

package org.tourage.doughtemperature;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.io.Serializable;
import java.util.List;
import java.util.Locale;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.internal.Numbers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.TemperatureDifference;

/**
 * The water by the factor rule beside that by the heat balance, which of the two to take where they
 * differ, and why. The rule's figure may be one that no liquid can have.
 *
 * @param rule the water by the factor rule
 * @param balance the water by the heat balance
 * @param difference the rule less the balance
 * @param taken which one to take
 * @param why for what reason
 */
public record RuleComparison(
    Amount<Temperature> rule,
    Amount<Temperature> balance,
    TemperatureDifference difference,
    Taken taken,
    String why)
    implements Serializable {

  /** Rule and balance agree up to this, K. */
  private static final double AGREE = 2;

  /** Which figure to take. */
  public enum Taken {
    /** The factor rule. */
    RULE,
    /** The heat balance. */
    BALANCE
  }

  /**
   * Checks that nothing is null.
   *
   * @param rule the water by the factor rule
   * @param balance the water by the heat balance
   * @param difference the rule less the balance
   * @param taken which one to take
   * @param why for what reason
   */
  public RuleComparison {
    requireNonNull(rule, "rule");
    requireNonNull(balance, "balance");
    requireNonNull(difference, "difference");
    requireNonNull(taken, "taken");
    requireNonNull(why, "why");
  }

  static RuleComparison of(
      Amount<Temperature> rule, Amount<Temperature> balance, Taken taken, String why) {
    return new RuleComparison(
        rule,
        balance,
        TemperatureDifference.ofCelsiusDegrees(rule.in(CELSIUS) - balance.in(CELSIUS)),
        taken,
        why);
  }

  static RuleComparison of(FactorRule rule, HeatBalance balance, StageMix mix, MixerHeat heat) {
    boolean plain = heat.origin() == MixerHeat.Origin.FRICTION && !mix.hasStatedParts();
    Mixture mixture = balance.mixture();
    double share = mixture.liquidCapacity() / mixture.capacity();
    return of(
        rule.water(),
        balance.waterTemperature(),
        plain ? Taken.RULE : Taken.BALANCE,
        plain
            ? "A friction is a number of the rule, found with it on straight doughs like this one;"
                + " measure one mix, and the balance knows the mixer itself"
            : mix.ingredients().isEmpty() ? weighsAlike(share) : coldParts(mix));
  }

  /** Why the rule is off where something comes cold or warm. */
  private static String coldParts(StageMix mix) {
    return "The rule knows nothing of what goes in cold or warm: "
        + mix.ingredients().stream()
            .map(r -> mix.batch().formula().ingredient(r.name()).name())
            .collect(java.util.stream.Collectors.joining(", "));
  }

  /** Why the rule is off. */
  static String weighsAlike(double liquidShare) {
    return "It takes each factor to weigh alike, while the liquid holds "
        + Numbers.decimals(100 * liquidShare, 0)
        + " % of the heat of this dough and the room holds none; measure one mix and keep its"
        + " friction";
  }

  /**
   * Whether they differ by more than 2 K.
   *
   * @return true if they do
   */
  public boolean differs() {
    return Math.abs(difference.celsiusDegrees()) > AGREE;
  }

  /**
   * The comparison as advice.
   *
   * @return a note that says how far the rule is off and which figure to take; none within 2 K
   */
  public List<Advice> advice() {
    if (!differs()) {
      return List.of();
    }
    double off = difference.celsiusDegrees();
    return List.of(
        Advice.of(
            "FACTOR_RULE_OFF",
            "the factor rule asks for water "
                + Numbers.decimals(Math.abs(off), 1)
                + " K "
                + (off > 0 ? "warmer" : "colder")
                + " than the heat balance",
            "Take the " + (taken == Taken.RULE ? "rule" : "balance") + ". " + why));
  }

  /** A reading that a liquid can have, or what stands for it. */
  private static String shown(Amount<Temperature> reading) {
    double celsius = reading.in(CELSIUS);
    if (celsius < Readings.COLDEST_LIQUID) {
      return "ice";
    }
    return celsius > Readings.WARMEST_LIQUID
        ? "more than " + Numbers.decimals(Readings.WARMEST_LIQUID, 0) + " °C"
        : Numbers.decimals(celsius, 1) + " °C";
  }

  /** {@code rule 14 °C, balance 17.7 °C: take the rule}. */
  @Override
  public String toString() {
    return "rule "
        + shown(rule)
        + ", balance "
        + shown(balance)
        + (differs() ? ": take the " + taken.name().toLowerCase(Locale.ROOT) : "");
  }
}

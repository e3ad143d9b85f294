package org.tourage.label;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.DAY;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.internal.Numbers;
import org.tourage.physics.MouldFreeDays;
import org.tourage.physics.Solute;
import org.tourage.physics.Solution;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.AmountRange;
import org.tourage.quantity.Given;

/**
 * How long a crumb or a filling stays free of mould, as a range, from its water activity. It is an
 * estimate and no shelf-life study: staling, rancidity, yeasts, bacteria and the hygiene of the
 * bench are not in it.
 *
 * <p>The water activity is that of what is dissolved: salt and sugars in the water ({@link
 * Solution}). Its upper end takes all the water as solvent, and sugar that yeast eats as gone; its
 * lower end takes 0.3 g of water for each gram of starch, protein and fibre as bound (a figure of
 * textbooks, from memory), and in a dough with yeast all sugar as split into glucose. Both ends are
 * 0.01 further out for what the equations leave open. Syrups and honey count as glucose, other
 * sugars as sucrose. Immutable.
 *
 * @param name what keeps
 * @param waterActivity its water activity, from the lower to the upper end
 * @param at where it is kept, 21 °C to 27 °C
 * @param perishable whether it holds egg or milk
 */
public record Keeping(
    String name,
    AmountRange<Dimensionless> waterActivity,
    Amount<Temperature> at,
    boolean perishable)
    implements Explained, Serializable {
  private static final String SOURCE =
      "S.P. Cauvain and D.A.L. Seiler 1992, as quoted; 27 °C from memory";

  /** Water that starch, protein and fibre keep from being a solvent, g/g (from memory). */
  private static final double BOUND = 0.3;

  /** Sugar that yeast eats, in parts of the flour: three points at most (common practice). */
  private static final double EATEN = 0.03;

  /** What the equations leave open either way, mixtures of sugar and salt above all. */
  private static final double EQUATIONS = 0.01;

  /** A sugar with more water than this is a syrup. */
  private static final double SYRUP_WATER = 0.05;

  /**
   * Below this water activity the model code asks for no cold (FDA Food Code 1-201.10, from
   * memory).
   */
  private static final double COLD_FROM = 0.85;

  /**
   * A part of a filling.
   *
   * @param ingredient the ingredient
   * @param mass how much of it
   */
  public record Part(Ingredient ingredient, Amount<Mass> mass) implements Serializable {
    /**
     * Checks the mass.
     *
     * @param ingredient the ingredient
     * @param mass how much of it, 0 g or more
     */
    public Part {
      requireNonNull(mass, "mass");
      requireNonNull(ingredient, "ingredient");
      if (mass.value() < 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a filling can't hold less than nothing",
            ingredient.name() + ": " + mass,
            "give 0 g or more");
      }
    }

    /**
     * A part of a filling.
     *
     * @param ingredient the ingredient
     * @param mass how much of it, 0 g or more
     * @return the part
     * @throws BakeryException if the mass is negative
     */
    public static Part of(Ingredient ingredient, Quantity<Mass> mass) {
      return new Part(ingredient, Given.mass("the mass", requireNonNull(mass, "mass")));
    }
  }

  /**
   * Checks the figures.
   *
   * @param name what keeps
   * @param waterActivity its water activity, above 0 % to 100 %
   * @param at where it is kept, 21 °C to 27 °C
   * @param perishable whether it holds egg or milk
   */
  public Keeping {
    requireNonNull(waterActivity, "waterActivity");
    requireNonNull(at, "at");
    requireNonNull(name, "name");
    double low = waterActivity.low().in(FRACTION);
    double high = waterActivity.high().in(FRACTION);
    if (!(low > 0) || high > 1) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no food has this water activity",
          name + ": " + waterActivity,
          "give a share of 1, above 0 % to 100 %");
    }
    // refuses a temperature at which nothing was observed
    MouldFreeDays.at(MouldFreeDays.RANGE.high(), at);
  }

  private static final Amount<Temperature> ROOM = CELSIUS.amount(21);

  /**
   * A measured water activity.
   *
   * @param name what keeps
   * @param measured its water activity, above 0 % to 100 %
   * @param perishable whether it holds egg or milk
   * @return the estimate at 21 °C
   * @throws BakeryException if no food has it
   */
  public static Keeping measured(
      String name, AmountRange<Dimensionless> measured, boolean perishable) {
    return new Keeping(name, measured, ROOM, perishable);
  }

  /**
   * The crumb of a baked formula, without its finish.
   *
   * @param formula the formula
   * @param loss what the piece loses by baking and cooling, by its mass, 0 % to below 100 %
   * @return the estimate at 21 °C
   * @throws BakeryException if there is no water left, or the crumb is drier than the equations
   *     hold
   */
  public static Keeping ofCrumb(Formula formula, Quantity<Dimensionless> loss) {
    Tally tally = new Tally();
    for (Stage stage : formula.stages()) {
      if (stage.kind().inPiece()) {
        for (Line line : stage.lines()) {
          tally.add(line.ingredient(), line.percent().in(PERCENT));
        }
      }
    }
    return tally.keeping(
        "crumb of " + formula.name(), FRACTION.measure("the loss", requireNonNull(loss, "loss")));
  }

  /**
   * A filling, a cream, a jam.
   *
   * @param name what it is called
   * @param loss what it loses by cooking, by its mass, 0 % to below 100 %
   * @param parts what is in it
   * @return the estimate at 21 °C
   * @throws BakeryException if there is no water left, or it is thicker than the equations hold
   */
  public static Keeping ofFilling(String name, Quantity<Dimensionless> loss, Part... parts) {
    Tally tally = new Tally();
    for (Part part : parts) {
      tally.add(part.ingredient, part.mass.in(GRAM));
    }
    return tally.keeping(name, FRACTION.measure("the loss", requireNonNull(loss, "loss")));
  }

  /** Sums over the parts, in any one unit of mass. */
  private static final class Tally {
    private double mass;
    private double flour;
    private double water;
    private double sucrose;
    private double glucose;
    private double salt;
    private double binding;
    private boolean yeast;
    private boolean perishable;

    void add(Ingredient ingredient, double amount) {
      mass += amount;
      flour += ingredient.is(Role.FLOUR) ? amount : 0;
      double wet = ingredient.composition().fraction(Component.WATER);
      double sugars = amount * ingredient.composition().fraction(Component.SUGARS);
      water += amount * wet;
      boolean syrup = ingredient.is(Role.SUGAR) && wet > SYRUP_WATER;
      glucose += syrup ? sugars : 0;
      sucrose += syrup ? 0 : sugars;
      salt += amount * ingredient.saltFraction();
      binding +=
          amount
                  * (ingredient.composition().fraction(Component.PROTEIN)
                      + ingredient.composition().fraction(Component.CARBOHYDRATE))
              - sugars;
      yeast |= ingredient.is(Role.YEAST);
      perishable |= ingredient.is(Role.EGG) || ingredient.allergens().contains(Allergen.MILK);
    }

    Keeping keeping(String name, double loss) {
      double left = water - loss * mass;
      double solvent = left - BOUND * Math.max(0, binding);
      boolean wet = loss >= 0 && loss < 1 && solvent > 0;
      if (!wet) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "too little water is left for an estimate from what is dissolved",
            name
                + ": "
                + Numbers.decimals(100 * left / Math.max(mass, 1e-9), 1)
                + " % of water after a loss of "
                + Numbers.decimals(100 * loss, 1)
                + " %",
            "measure the water activity and use Keeping.measured(…)");
      }
      double eaten = yeast ? Math.min(EATEN * flour, sucrose) : 0;
      Solution weak = solution(left, sucrose - eaten, glucose);
      Solution strong =
          yeast ? solution(solvent, 0, glucose + sucrose) : solution(solvent, sucrose, glucose);
      return new Keeping(
          name,
          new AmountRange<>(
              FRACTION.amount(strong.waterActivity().in(FRACTION) - EQUATIONS),
              FRACTION.amount(Math.min(1, weak.waterActivity().in(FRACTION) + EQUATIONS))),
          ROOM,
          perishable);
    }

    private Solution solution(double solvent, double sucrose, double glucose) {
      return Solution.of(GRAM.amount(solvent))
          .with(Solute.SUCROSE, GRAM.amount(sucrose))
          .with(Solute.GLUCOSE, GRAM.amount(glucose))
          .with(Solute.SODIUM_CHLORIDE, GRAM.amount(salt));
    }
  }

  /**
   * The same kept at another temperature.
   *
   * @param temperature 21 °C to 27 °C
   * @return the estimate
   * @throws BakeryException if nothing was observed at that temperature
   */
  public Keeping keptAt(Quantity<Temperature> temperature) {
    return new Keeping(
        name,
        waterActivity,
        Given.temperature("the temperature", requireNonNull(temperature, "temperature")),
        perishable);
  }

  /**
   * The days until mould is seen without preservatives. Wetter than 90 %, where nothing was
   * observed, the lower end is 0 days; drier than 74 % the upper end is what was observed at 74 %,
   * and it may be longer; the advice says so.
   *
   * @return the range in days
   */
  public AmountRange<Time> mouldFree() {
    AmountRange<Dimensionless> seen = MouldFreeDays.RANGE;
    boolean wetter = waterActivity.high().compareTo(seen.high()) > 0;
    return new AmountRange<>(
        wetter ? DAY.amount(0) : MouldFreeDays.at(within(waterActivity.high()), at),
        MouldFreeDays.at(within(waterActivity.low()), at));
  }

  private static Amount<Dimensionless> within(Amount<Dimensionless> activity) {
    AmountRange<Dimensionless> seen = MouldFreeDays.RANGE;
    return activity.compareTo(seen.low()) < 0
        ? seen.low()
        : activity.compareTo(seen.high()) > 0 ? seen.high() : activity;
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    advice.add(
        Advice.of(
            "NO_SHELF_LIFE_STUDY",
            "the days are an estimate of mould alone, on cake without preservatives",
            "It is no shelf-life study and gives no date for a label: let a laboratory test what is"
                + " sold, and follow your local code"));
    if (perishable && waterActivity.high().in(FRACTION) > COLD_FROM) {
      advice.add(
          Advice.of(
              "HOLD_COLD",
              name + " holds egg or milk and may be wetter than a water activity of 0.85",
              "Germs that make ill grow before mould is seen: unless your local authority has agreed"
                  + " otherwise, hold it at 5 °C (41 °F) or below"));
    }
    if (waterActivity.high().compareTo(MouldFreeDays.RANGE.high()) > 0) {
      advice.add(
          Advice.of(
              "WETTER_THAN_OBSERVED",
              "above a water activity of 0.90 no days were observed: mould may come at any time",
              "Count on a day or two at most, and sell it fresh"));
    }
    if (waterActivity.low().compareTo(MouldFreeDays.RANGE.low()) < 0) {
      advice.add(
          Advice.of(
              "DRIER_THAN_OBSERVED",
              "below a water activity of 0.74 no days were observed: it may keep longer",
              "It turns stale or rancid first"));
    }
    return advice;
  }

  @Override
  public Working working() {
    return Working.of(
        new WorkedLine(
            "a_w",
            "x_w·e^−(Σ√K·x)² of the sugars × e^−(0.036·m·φ) of the salt",
            activities(),
            "R.S. Norrish 1966, K.S. Pitzer and G. Mayorga 1973, K.D. Ross 1975 (from memory)"),
        new WorkedLine(
            "days",
            "10^(7.91 − 0.081·ERH) at 21 °C, 10^(6.42 − 0.065·ERH) at 27 °C",
            days() + " at " + AmountFormat.sideBySide().temperature(at),
            SOURCE));
  }

  private String activities() {
    String low = Numbers.fixed(waterActivity.low().in(FRACTION), 2);
    String high = Numbers.fixed(waterActivity.high().in(FRACTION), 2);
    return low.equals(high) ? low : low + " to " + high;
  }

  private String days() {
    AmountRange<Time> range = mouldFree();
    String low = Numbers.significant(range.low().in(DAY), 2);
    String high = Numbers.significant(range.high().in(DAY), 2);
    return (low.equals(high) ? low : low + " to " + high) + " days";
  }

  /** {@code crumb of muffins: water activity 0.86 to 0.93, free of mould for 0 to 8.8 days …}. */
  @Override
  public String toString() {
    return name
        + ": water activity "
        + activities()
        + ", free of mould for "
        + days()
        + " at "
        + AmountFormat.sideBySide().temperature(at)
        + "; an estimate, no shelf-life study";
  }
}

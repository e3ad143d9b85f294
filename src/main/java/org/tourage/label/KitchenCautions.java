package org.tourage.label;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Role;
import org.tourage.ingredient.YeastForm;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.BakeryUnits;
import org.tourage.quantity.Given;

/**
 * The usual cautions of a bakery for a formula. They are reminders, not a food-safety plan: local
 * codes and licensed practice decide.
 */
public final class KitchenCautions {
  private static final double MOST_WARM_HOURS = 4;
  private static final double MOST_COOL_HOURS = 6;
  private static final double COLD_CELSIUS = 5;
  private static final double COOL_CELSIUS = 21;
  private static final double HOT_CELSIUS = 57;
  private static final double COOL_WITHIN_HOURS = 2;
  private static final double COLD_WITHIN_HOURS = 6;
  private static final double AMBIENT_WITHIN_HOURS = 4;

  /** Dry yeast that wets below about this loses strength: 20 °C and above, common practice. */
  private static final double DRY_YEAST_CELSIUS = 20;

  private static final int LOOKS_A_LEG = 200;

  private static final Pattern LYE =
      Pattern.compile("\\b(lye|caustic)\\b", Pattern.CASE_INSENSITIVE);

  private KitchenCautions() {}

  /**
   * The cautions for a formula.
   *
   * @param formula the formula
   * @return safety advice
   */
  public static List<Advice> of(Formula formula) {
    requireNonNull(formula, "formula");
    List<Advice> advice = new ArrayList<>();
    advice.add(
        Advice.of(
            "RAW_FLOUR",
            "flour is a raw food and dough is not to be tasted",
            "Bake it through and wash hands, bench and tools"));
    boolean egg = formula.lines().stream().anyMatch(l -> l.ingredient().is(Role.EGG));
    if (egg) {
      advice.add(
          Advice.of(
              "RAW_EGG",
              "raw egg can carry salmonella",
              "Keep it cold; food with raw egg that is not served at once is cooked to 68 °C (155 °F) for 17 s, or as your local code says"));
    }
    boolean perishable = egg || formula.lines().stream().anyMatch(KitchenCautions::isMilky);
    if (perishable) {
      advice.add(
          Advice.of(
              "COLD_HOLDING",
              "milk, cream and egg spoil in the warm",
              "Hold them at 5 °C (41 °F) or below, and follow your local code for doughs and fillings that stay warm"));
    }
    advice.add(
        Advice.of(
            "HOT_OVEN",
            "oven, trays, steam and melted sugar burn",
            "Use dry cloths, stand aside when the door opens, keep learners back"));
    advice.add(
        Advice.of(
            "FLOUR_DUST",
            "flour dust harms the lungs, makes some people allergic for life and can burn",
            "Tip and dust it low and slowly, wipe instead of blowing, keep flames away"));
    advice.add(
        Advice.of(
            "MIXER",
            "a mixer draws in hands, sleeves and hair",
            "Stop it before you scrape or feel the dough, keep its guard on, tie up hair and cloth"));
    boolean rolled = formula.stages().stream().anyMatch(s -> s.kind() == StageKind.ROLL_IN);
    if (rolled) {
      advice.add(
          Advice.of(
              "SHEETER",
              "a dough sheeter draws fingers in",
              "Use it only with its guards and after instruction, as its maker and your local rules say"));
    }
    return advice;
  }

  /**
   * The caution for a dough that stays out of the cold for long. Food that needs time and
   * temperature control for safety is held at 5 °C or below, or at 57 °C or above (FDA Food Code
   * 2022, 3-501.16(A)), or by time alone for at most 4 hours (3-501.19(B)).
   *
   * @param formula the formula
   * @param warm how long it is between 5 °C and 57 °C, all stages together
   * @return safety advice if it holds egg, milk or a plant drink and the time is over 4 hours; a
   *     note if it does and the time is shorter; none otherwise
   */
  public static List<Advice> warmHold(Formula formula, Quantity<Time> warm) {
    requireDuration(warm);
    if (!needsControl(formula)) {
      return List.of();
    }
    String time = AmountFormat.metric().time(warm);
    if (BakeryUnits.HOUR.measure("the warm", requireNonNull(warm, "warm")) > MOST_WARM_HOURS) {
      return List.of(
          Advice.of(
              "WARM_HOLD",
              "a dough with egg, milk or plant drink is "
                  + time
                  + " above 5 °C (41 °F), longer than the 4 hours that the model code gives by time"
                  + " alone",
              "Chill sooner, or ask your local authority how your code sees fermenting doughs; it decides"));
    }
    return List.of(
        warmHoldTime(
            "a dough with egg, milk or plant drink is " + time + " above 5 °C (41 °F)",
            "The model code gives at most 4 hours by time alone; your local code decides",
            "FDA Food Code 2022, section 3-501.19(B)"));
  }

  /**
   * The caution for a dough that stays out of the cold for long, with the 6 hours that the code
   * gives to food that starts at 5 °C or below and is never above 21 °C (3-501.19(C)).
   *
   * @param formula the formula
   * @param warm how long it is between 5 °C and 57 °C, all stages together
   * @param start its temperature at the start
   * @param warmest its highest temperature
   * @return as {@link #warmHold(Formula, Quantity)}, or a note for up to 6 hours if the second rule
   *     holds
   */
  public static List<Advice> warmHold(
      Formula formula,
      Quantity<Time> warm,
      Quantity<Temperature> start,
      Quantity<Temperature> warmest) {
    boolean sixHours =
        BakeryUnits.CELSIUS.measure("the start", requireNonNull(start, "start")) <= COLD_CELSIUS
            && BakeryUnits.CELSIUS.measure("the warmest", requireNonNull(warmest, "warmest"))
                <= COOL_CELSIUS;
    requireDuration(warm);
    double hours = BakeryUnits.HOUR.measure("the warm", requireNonNull(warm, "warm"));
    boolean told = sixHours && hours > MOST_WARM_HOURS && hours <= MOST_COOL_HOURS;
    if (!told || !needsControl(formula)) {
      return warmHold(formula, warm);
    }
    return List.of(
        warmHoldTime(
            "a dough with egg, milk or plant drink is "
                + AmountFormat.metric().time(warm)
                + " above 5 °C (41 °F), never above 21 °C (70 °F)",
            "The model code gives at most 6 hours to what starts at 5 °C or below and stays below"
                + " 21 °C; mark the time and watch the thermometer; your local code decides",
            "FDA Food Code 2022, section 3-501.19(C)"));
  }

  /**
   * Whether something that was cooked, or made warm, cools quickly enough: from 57 °C to 21 °C
   * within 2 hours and to 5 °C within 6 hours in all (3-501.14(A)); what starts below 57 °C within
   * 4 hours to 5 °C (3-501.14(B)).
   *
   * @param core the temperature in its middle
   * @return safety advice if it does not, or is not cold at the end; none otherwise
   */
  public static List<Advice> cooling(TemperatureHistory core) {
    requireNonNull(core, "core");
    double start = core.legs().get(0).from().in(BakeryUnits.CELSIUS);
    boolean hot = start >= HOT_CELSIUS;
    double from = hot ? below(core, HOT_CELSIUS) : 0;
    double cool = below(core, COOL_CELSIUS) - from;
    double cold = below(core, COLD_CELSIUS) - from;
    boolean fits =
        hot ? cool <= COOL_WITHIN_HOURS && cold <= COLD_WITHIN_HOURS : cold <= AMBIENT_WITHIN_HOURS;
    if (fits || start <= COLD_CELSIUS) {
      return List.of();
    }
    String reached =
        Double.isInfinite(cold)
            ? "it is not at 5 °C (41 °F) at the end"
            : "it takes "
                + AmountFormat.metric().time(BakeryUnits.HOUR.amount(cold))
                + " to 5 °C (41 °F)"
                + (Double.isInfinite(cool) || !hot
                    ? ""
                    : ", "
                        + AmountFormat.metric().time(BakeryUnits.HOUR.amount(cool))
                        + " to 21 °C (70 °F)");
    return List.of(
        Advice.of(
            "COOLING_SLOW",
            "from " + (hot ? "57 °C (135 °F)" : "warm") + " " + reached,
            hot
                ? "Cool to 21 °C within 2 hours and to 5 °C within 6 in all: thinner layers, an ice"
                    + " bath, moving air; your local code decides"
                : "Cool to 5 °C within 4 hours: thinner layers, an ice bath, moving air; your local"
                    + " code decides"));
  }

  /** Hours until it is at or below a temperature for good; infinite if it never is. */
  private static double below(TemperatureHistory core, double celsius) {
    double hours = 0;
    double since = core.legs().get(0).from().in(BakeryUnits.CELSIUS) <= celsius ? 0 : -1;
    for (TemperatureHistory.Leg leg : core.legs()) {
      double seconds = leg.duration().in(BakeryUnits.SECOND);
      for (int i = 1; i <= LOOKS_A_LEG; i++) {
        double at = seconds * i / LOOKS_A_LEG;
        boolean under = leg.celsiusAfter(at) <= celsius;
        since = under ? (since < 0 ? hours + at / 3600 : since) : -1;
      }
      hours += seconds / 3600;
    }
    return since < 0 ? Double.POSITIVE_INFINITY : since;
  }

  /**
   * The caution for dry yeast in cold or iced water.
   *
   * @param formula the formula
   * @param water the temperature of the water that the dough is mixed with
   * @return advice if it has dry yeast and the water is below 20 °C; none otherwise
   */
  public static List<Advice> coldWater(Formula formula, Quantity<Temperature> water) {
    boolean dry =
        formula.lines().stream()
            .map(l -> YeastForm.of(l.ingredient()))
            .anyMatch(f -> f.isPresent() && f.get() != YeastForm.FRESH);
    if (!dry
        || BakeryUnits.CELSIUS.measure("the water", requireNonNull(water, "water"))
            >= DRY_YEAST_CELSIUS) {
      return List.of();
    }
    return List.of(
        Advice.of(
            "DRY_YEAST_COLD_WATER",
            "dry yeast that wets in water of "
                + AmountFormat.sideBySide().temperature(water)
                + " loses strength",
            "Mix instant yeast with the flour first, or wake it in a little water from the recipe"
                + " at its own temperature; never strew it on ice"));
  }

  /**
   * The caution for what is cut off a sheet.
   *
   * @return safety advice
   */
  public static Advice trim() {
    return Advice.of(
        "TRIM",
        "trim brings its allergens, its warmth and its age into the next dough",
        "Put it into the same formula on the same day, cold, or bake it; never into another product");
  }

  /**
   * The caution for a kettle, as bagels need one.
   *
   * @return safety advice
   */
  public static Advice kettle() {
    return Advice.of(
        "BOILING_KETTLE",
        "boiling water and its steam scald",
        "Lower pieces with a long skimmer, fill the kettle half, lift lids away from you");
  }

  /**
   * The caution for a step that works with lye (sodium hydroxide), as a dip before the oven does.
   *
   * @param step the words of the step, for example {@code dip in lye}
   * @return safety advice if the words name lye or caustic soda; none otherwise
   */
  public static List<Advice> lye(String step) {
    if (!LYE.matcher(requireNonNull(step, "step")).find()) {
      return List.of();
    }
    return List.of(
        Advice.of(
            "LYE",
            "lye burns skin and eyes, can blind, and eats aluminium",
            "Wear goggles, long gloves and an apron, keep learners and bare hands away; take food-grade"
                + " lye of the strength that your local code allows, stir lye into cold water, never"
                + " water onto lye, in steel or plastic and never in aluminium; on skin or in eyes rinse"
                + " with running water for a quarter of an hour and call for help; label it, lock it away,"
                + " and bake every dipped piece through: none is eaten raw"));
  }

  private static void requireDuration(Quantity<Time> warm) {
    if (BakeryUnits.HOUR.measure("the warm", requireNonNull(warm, "warm")) < 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a dough can't be warm for less than no time",
          "warm " + Given.time("the warm", warm),
          "give 0 h or more");
    }
  }

  private static boolean needsControl(Formula formula) {
    return formula.lines().stream().anyMatch(KitchenCautions::needsControl);
  }

  private static boolean needsControl(Line line) {
    // the finish counts too, it is held beside the dough
    return needsControl(line.ingredient());
  }

  /**
   * Whether something is held cold or by the clock: egg, milk, and a plant drink, which brings
   * protein as well.
   *
   * @param ingredient the ingredient
   * @return whether it needs control of time and temperature
   */
  public static boolean needsControl(Ingredient ingredient) {
    boolean drink =
        ingredient.is(Role.LIQUID) && ingredient.composition().fraction(Component.PROTEIN) > 0;
    return drink || ingredient.is(Role.EGG) || ingredient.is(Role.DAIRY);
  }

  private static boolean isMilky(Line line) {
    boolean moist = line.ingredient().is(Role.LIQUID) || line.ingredient().is(Role.DAIRY);
    return moist && line.ingredient().allergens().contains(Allergen.MILK);
  }

  private static Advice warmHoldTime(String text, String remedy, String source) {
    return Advice.of("WARM_HOLD_TIME", text, remedy, source);
  }
}

package org.tourage.fermentation;

import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.Advice;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.formula.Stage;
import org.tourage.ingredient.Component;
import org.tourage.ingredient.Role;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * What holds yeast and sourdough bacteria back in a dough: salt and sugar in its water. Only limits
 * are published in what was at hand: 4 % sodium chloride, by the flour, stop Lactobacillus
 * sanfranciscensis, 8 % are borne by the yeast Candida milleri (M.G. Gänzle, M. Ehmann and W.P.
 * Hammes, Appl. Environ. Microbiol. 64 (1998) 2616; M.J. Brandt, W.P. Hammes and M.G. Gänzle, Eur.
 * Food Res. Technol. 218 (2004) 333). For baker's yeast there are thresholds of the trade, so that
 * it gets advice and no factor: watch one rise of the dough as it is.
 *
 * @param saltInWater salt over salt and water of the dough
 * @param saltOnFlour salt over flour
 * @param sugarOnFlour sugars, without those of flour and milk, over flour
 */
public record OsmoticLoad(
    Amount<Dimensionless> saltInWater,
    Amount<Dimensionless> saltOnFlour,
    Amount<Dimensionless> sugarOnFlour)
    implements Explained, Serializable {
  private static final double LACTOBACILLI_STOP_PERCENT = 4;
  private static final double SUGAR_SLOWS_PERCENT = 6;
  private static final double SUGAR_HIGH_PERCENT = 12;

  /** Sweet doughs usually have up to so much sugar; common practice. */
  private static final double SWEETEST_USUAL_PERCENT = 20;

  private static final double SALT_HIGH_PERCENT = 2.5;

  /**
   * The load of a dough, its roll-in fat and finish left out.
   *
   * @param formula the formula
   * @return the load
   */
  public static OsmoticLoad of(Formula formula) {
    double water = 0;
    double salt = 0;
    double sugar = 0;
    for (Stage stage : formula.stages()) {
      if (!stage.kind().inDough()) {
        continue;
      }
      for (Line line : stage.lines()) {
        double share = line.percent().in(FRACTION);
        water += share * line.ingredient().composition().fraction(Component.WATER);
        salt += share * line.ingredient().saltFraction();
        sugar +=
            line.ingredient().is(Role.SUGAR)
                ? share * line.ingredient().composition().fraction(Component.SUGARS)
                : 0;
      }
    }
    double inWater = salt == 0 ? 0 : salt / (salt + water);
    return new OsmoticLoad(
        PERCENT.amount(100 * inWater), PERCENT.amount(100 * salt), PERCENT.amount(100 * sugar));
  }

  /**
   * How much of their rate the sourdough lactobacilli keep: 1 − salt/4 %, at least 0, with the salt
   * by the flour, as bakers count it. The limit is published, the straight line is a modelling
   * choice.
   *
   * @return the factor, 0 to 1
   */
  public double lactobacilliFactor() {
    return keptOf(saltOnFlour);
  }

  static double keptOf(Amount<Dimensionless> saltOnFlour) {
    return Math.max(0, 1 - saltOnFlour.in(PERCENT) / LACTOBACILLI_STOP_PERCENT);
  }

  @Override
  public List<Advice> advice() {
    AmountFormat format = AmountFormat.metric();
    List<Advice> advice = new ArrayList<>();
    if (sugarOnFlour.in(PERCENT) > SUGAR_HIGH_PERCENT) {
      advice.add(
          Advice.of(
              sugarOnFlour.in(PERCENT) > SWEETEST_USUAL_PERCENT ? "SUGAR_VERY_HIGH" : "SUGAR_HIGH",
              "sugar is "
                  + format.percent(sugarOnFlour)
                  + " of flour: it draws water from the yeast",
              "Take yeast that is made for sweet doughs, or more of it, and expect a slower rise"));
    } else if (sugarOnFlour.in(PERCENT) > SUGAR_SLOWS_PERCENT) {
      advice.add(
          Advice.of(
              "SUGAR_SLOWS",
              "sugar is " + format.percent(sugarOnFlour) + " of flour and slows the yeast",
              "Calibrate the rise with this dough, not with a lean one"));
    }
    if (saltOnFlour.in(PERCENT) > SALT_HIGH_PERCENT) {
      advice.add(
          Advice.of(
              "SALT_SLOWS",
              "salt is " + format.percent(saltOnFlour) + " of flour and slows the yeast",
              "Doughs usually have 1.8 % to 2.2 %"));
    }
    return advice;
  }

  @Override
  public Working working() {
    AmountFormat format = AmountFormat.metric();
    return Working.of(
        new WorkedLine(
            "salt in water",
            "salt / (salt + water)",
            format.percent(saltInWater),
            "composition; salt is sodium × 2.5, Regulation (EU) No 1169/2011, Annex I"),
        new WorkedLine(
            "lactobacilli",
            "1 − salt on flour / 4 %",
            PERCENT.amount(100 * lactobacilliFactor()).toString(),
            "Gänzle and others 1998, Brandt and others 2004 (the limit); a modelling choice (the"
                + " line)"));
  }

  /** {@code salt 3.1 % of the water phase, sugar 12 % of flour}. */
  @Override
  public String toString() {
    AmountFormat format = AmountFormat.metric();
    return "salt "
        + format.percent(saltInWater)
        + " of the water phase, sugar "
        + format.percent(sugarOnFlour)
        + " of flour";
  }
}

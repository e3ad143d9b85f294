package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.command.Main;
import org.tourage.day.BakeDay;
import org.tourage.day.DayTime;
import org.tourage.day.Timetable;
import org.tourage.doughtemperature.FactorRule;
import org.tourage.fermentation.DoughBody;
import org.tourage.fermentation.DoughGas;
import org.tourage.fermentation.EquivalentTime;
import org.tourage.fermentation.Rise;
import org.tourage.fermentation.RiseHistory;
import org.tourage.fermentation.Rosso1993;
import org.tourage.formula.Formula;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.formula.Preferment;
import org.tourage.formula.StageKind;
import org.tourage.ingredient.Catalogue;
import org.tourage.label.AllergenSummary;
import org.tourage.label.Keeping;
import org.tourage.lamination.Fold;
import org.tourage.lamination.FoldSequence;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LockIn;
import org.tourage.makeup.CuttingPlan;
import org.tourage.makeup.Shape;
import org.tourage.oven.Bake;
import org.tourage.oven.BakePiece;
import org.tourage.oven.DoughKind;
import org.tourage.oven.OvenModel;
import org.tourage.oven.OvenProfile;
import org.tourage.oven.ThermalDeath;
import org.tourage.physics.Solid;
import org.tourage.physics.Solute;
import org.tourage.physics.Solution;
import org.tourage.physics.TemperatureHistory;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.TemperatureDifference;
import org.tourage.substitution.FlourBlend;
import org.tourage.substitution.FlourExchange;
import org.tourage.substitution.FlourProperty;
import org.tourage.substitution.IngredientExchange;
import org.tourage.substitution.PlantBased;

class SerialisationTest {
  @Test
  void everyResultTravelsThroughAStreamUnchanged() throws Exception {
    Formula formula =
        Formula.byPercent(
            "travelling dough",
            f ->
                f.line("bread flour", percent(100))
                    .line("water", percent(60))
                    .line("salt", percent(2))
                    .preferment(Preferment.poolish(percent(20)))
                    .rollIn("butter", percent(50)));
    List<Serializable> results =
        List.of(
            formula,
            formula.forFlour(grams(500)).rounded(grams(1)),
            formula.hydration(),
            HouseholdRecipe.of("x", "2 cups bread flour", "1 packet instant yeast"),
            HouseholdAmount.parse("1-2 hours"),
            TemperatureDifference.ofCelsiusDegrees(8),
            FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK),
            LaminationPlan.of(
                FoldSequence.lockIn(LockIn.HALF),
                grams(500),
                grams(150),
                kilogramsPerCubicMetre(1200),
                kilogramsPerCubicMetre(920),
                LaminationPlan.Setup.SMALL_BENCH),
            CuttingPlan.forPieces(Shape.TRIANGLE, 6, extent("600 x 250 mm"), millimetres(5), 2),
            FactorRule.of(celsius(24)).flour(fahrenheit(70)).friction(celsiusDegrees(8)),
            FlourExchange.of(
                formula,
                Catalogue.builtIn().require("bread flour"),
                Catalogue.builtIn().require("cake flour")),
            OvenProfile.of(celsius(200), minutes(10)),
            AllergenSummary.of(formula),
            Timetable.startingAt(
                DayTime.parse("8:00"), List.of(Timetable.Task.of("mix", minutes(5)))),
            Catalogue.builtIn().require("butter"),
            RiseHistory.start(rise(formula), celsius(25))
                .then(
                    "retard",
                    DoughBody.of(
                        Solid.ball(millimetres(80)), formula.constituents(StageKind::inDough)),
                    celsius(4),
                    hours(8)),
            EquivalentTime.of(
                rise(formula).model(),
                TemperatureHistory.ofHold(celsius(20), hours(2)),
                celsius(25)),
            IngredientExchange.of(
                formula,
                Catalogue.builtIn().require("butter"),
                Catalogue.builtIn().require("salted butter")),
            PlantBased.of(formula),
            FlourBlend.of(
                    Catalogue.builtIn().require("bread flour"),
                    Catalogue.builtIn().require("cake flour"))
                .to(FlourProperty.PROTEIN, percent(10))
                .cheapest(),
            HouseholdRecipe.of("x", "2 cups bread flour", "1 cup water")
                .propagation("water", "g", b -> b.total().value())
                .linear(),
            Bake.of(
                BakePiece.of(Solid.roll(millimetres(40)), formula.constituents(StageKind::inPiece)),
                OvenModel.HOUSEHOLD,
                OvenProfile.of(celsius(200), minutes(10)),
                DoughKind.RICH),
            ThermalDeath.named("salmonella in bun dough"),
            Keeping.ofCrumb(formula, percent(12)),
            Solution.of(grams(100)).with(Solute.SUCROSE, grams(50)),
            Main.demo().plan(),
            BakeDay.of(Main.demo().plan()));
    for (Serializable result : results) {
      Object copy = roundTrip(result);
      assertThat(copy.toString()).isEqualTo(result.toString());
      assertThat(copy).isEqualTo(result).hasSameHashCodeAs(result);
    }
  }

  private static Rise rise(Formula formula) {
    return Rise.observed(
        DoughGas.of(formula, celsius(24)),
        Rosso1993.named("baker's yeast, growth"),
        2,
        minutes(100),
        celsius(24));
  }

  private static Object roundTrip(Serializable value) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(value);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      return in.readObject();
    }
  }
}

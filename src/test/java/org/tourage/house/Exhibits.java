package org.tourage.house;

import static org.tourage.quantity.Amounts.*;

import java.time.Duration;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import org.tourage.advice.BakeryException;
import org.tourage.command.Main;
import org.tourage.command.RecipeFile;
import org.tourage.day.BakeDay;
import org.tourage.day.DayPlan;
import org.tourage.day.DayTime;
import org.tourage.day.Form;
import org.tourage.day.Kitchen;
import org.tourage.day.KitchenOven;
import org.tourage.day.Order;
import org.tourage.day.Place;
import org.tourage.day.Procedure;
import org.tourage.day.Product;
import org.tourage.day.Step;
import org.tourage.fermentation.Arrhenius;
import org.tourage.fermentation.RateMarks;
import org.tourage.fermentation.Sourdough;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.FormulaTargets;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.formula.Levain;
import org.tourage.formula.Preferment;
import org.tourage.formula.Propagation;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.FoodDocument;
import org.tourage.ingredient.Ingredient;
import org.tourage.label.Cost;
import org.tourage.label.Money;
import org.tourage.label.PriceList;
import org.tourage.label.ShoppingList;
import org.tourage.lamination.CreasePlan;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LayerStack;
import org.tourage.lamination.LockIn;
import org.tourage.makeup.Shape;
import org.tourage.makeup.SheetForPieces;
import org.tourage.makeup.WeighedSheet;
import org.tourage.oven.BakePiece;
import org.tourage.oven.DoughKind;
import org.tourage.oven.OvenCalibration;
import org.tourage.oven.OvenModel;
import org.tourage.oven.OvenProfile;
import org.tourage.oven.StepDown;
import org.tourage.oven.ThermalDeath;
import org.tourage.physics.Solid;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Extent;
import org.tourage.quantity.Fraction;
import org.tourage.schedule.ExactScheduler;
import org.tourage.schedule.Goal;
import org.tourage.schedule.Link;
import org.tourage.schedule.ListScheduler;
import org.tourage.schedule.Need;
import org.tourage.schedule.Resource;
import org.tourage.schedule.ScheduleCheck;
import org.tourage.schedule.SchedulerAnswer;
import org.tourage.schedule.SchedulingProblem;
import org.tourage.schedule.Task;
import org.tourage.sheet.BenchSheet;
import org.tourage.sheet.CounterSheet;
import org.tourage.substitution.FlourBlend;
import org.tourage.substitution.FlourProperty;
import org.tourage.substitution.IngredientExchange;

/** The objects from which {@link Gallery} starts. Recipes and prices are invented. */
final class Exhibits {
  private static final Catalogue CATALOGUE = Catalogue.builtIn();
  private static final Ingredient FLOUR = CATALOGUE.require("bread flour");
  private static final Ingredient BUTTER = CATALOGUE.require("butter");
  private static final OvenProfile PROFILE = OvenProfile.of(celsius(200), minutes(20));

  private Exhibits() {}

  static Gallery all() {
    BakeDay demo = BakeDay.of(Main.demo().plan());
    Gallery gallery =
        new Gallery()
            .put(Main.demo(), demo, BenchSheet.of(demo, AmountFormat.metric()), CATALOGUE)
            .put(CounterSheet.of(demo, AmountFormat.metric()), food())
            .put(rings(), onEgg(), formulas(), money(), ovens(), models(), layers(), refusals())
            .put(plans());
    return gallery.grow().grow();
  }

  private static Object[] plans() {
    Need oven = Need.of("oven", 1).at("200 °C");
    SchedulingProblem problem =
        SchedulingProblem.builder()
            .resource(
                Resource.of("oven", 2)
                    .open(Duration.ofHours(4), Duration.ofHours(9), 2)
                    .changing("200 °C", "220 °C", Duration.ofMinutes(9)))
            .task(Task.of("prove", Duration.ofMinutes(60), Duration.ofMinutes(80)))
            .task(Task.of("bake", Duration.ofMinutes(20)).needing(oven).due(Duration.ofHours(7)))
            .link(Link.endToStart("prove", "bake"))
            .build();
    SchedulerAnswer answer = ListScheduler.create().schedule(problem, Goal.JUST_IN_TIME);
    return new Object[] {
      ListScheduler.create(),
      ExactScheduler.of(Duration.ofSeconds(1)),
      problem,
      answer,
      oven,
      answer.require().profile("oven").get(0),
      problem.resources().get(0).openings().get(0),
      new Resource.Change("200 °C", "220 °C", Duration.ofMinutes(9)),
      ScheduleCheck.violations(problem, Map.of()).get(0)
    };
  }

  private static Formula lean() {
    return Formula.byPercent(
        "Rings",
        f ->
            f.line("bread flour", percent(100))
                .line("water", percent(55))
                .line("salt", percent(2))
                .line("instant yeast", percent(0.8)));
  }

  private static List<Object> rings() {
    Procedure procedure =
        Procedure.of(
            Step.mix(minutes(15), celsius(24)),
            Step.shape(Form.ring(centimetres(3)), minutes(20)),
            Step.proof(minutes(60)).at(celsius(28)),
            Step.boil(seconds(45)),
            Step.bake(PROFILE));
    Product product = Product.of(lean(), procedure).with(FLOUR, Place.REFRIGERATOR);
    BakeDay day =
        BakeDay.of(
            DayPlan.of(
                Kitchen.USUAL.withOven(KitchenOven.HOUSEHOLD.withTrays(1, extent("30 x 20 cm"))),
                Order.pieces(product, 24, grams(90)).readyAt(DayTime.parse("day 2 09:00"))));
    return List.of(
        day,
        Order.asGiven(product),
        Order.parted(product, 12),
        Order.ofFlour(product, grams(800)),
        Form.BALL,
        Form.ball(centimetres(9)),
        Form.roll(centimetres(50)),
        Form.coil(centimetres(4)),
        Form.disc(centimetres(28)),
        Form.mould(centimetres(7)),
        Form.tin(extent("25 x 11 cm")),
        Form.rectangle(extent("25 x 11 cm")));
  }

  private static List<Object> onEgg() {
    Formula formula =
        Formula.byPercent(
            "Egg buns",
            f ->
                f.line("bread flour", percent(100))
                    .line("whole egg", percent(60))
                    .line("butter", percent(50))
                    .line("salt", percent(2))
                    .line("instant yeast", percent(1.5)));
    Procedure procedure = Procedure.of(Step.mix(minutes(20), celsius(21)));
    Kitchen hot = Kitchen.named("hot").withRoom(celsius(31)).withTap(celsius(24));
    return List.of(
        BakeDay.of(DayPlan.of(hot, Order.asGiven(Product.of(formula, procedure)))),
        BakeDay.of(
            DayPlan.of(
                hot,
                Order.asGiven(
                    Product.of(lean(), Procedure.of(Step.mix(minutes(12), celsius(19))))))));
  }

  private static List<Object> formulas() {
    Batch batch = lean().forFlour(grams(500));
    FormulaTargets targets =
        FormulaTargets.of(batch).move("water").hydration(percent(60)).dough(grams(800));
    HouseholdRecipe recipe = HouseholdRecipe.of("x", "2 cups bread flour", "1 cup water");
    return List.of(
        batch,
        targets,
        targets.solve(),
        FormulaTargets.of(batch).move("water").hydration(percent(60)).dough(grams(2000)).solve(),
        recipe,
        recipe.propagation("water", "g", b -> b.total().value()),
        recipe.propagation("water", "g", b -> b.total().value()).linear(),
        recipe.propagation("water", "g", b -> b.total().value()).sampled(200, 7),
        new Propagation("x", "g", List.of(Propagation.Input.between("a", 2, 1, 3)), v -> v[0]),
        Preferment.poolish(percent(20)),
        Levain.seed("Mother", FLOUR, CATALOGUE.require("water"), grams(20), percent(100))
            .build("First", grams(120), percent(100)),
        IngredientExchange.of(
            Formula.byPercent(
                "x",
                f ->
                    f.line("bread flour", percent(100))
                        .line("water", percent(40))
                        .line("butter", percent(20))),
            BUTTER,
            CATALOGUE.require("salted butter")),
        FlourBlend.of(FLOUR, CATALOGUE.require("cake flour"))
            .to(FlourProperty.PROTEIN, percent(10)),
        FlourBlend.of(FLOUR, CATALOGUE.require("cake flour"))
            .to(FlourProperty.PROTEIN, percent(10))
            .cheapest());
  }

  private static FoodDocument food() {
    return FoodDocument.parseOne(
        "{\"fdcId\":900000098,\"dataType\":\"SR Legacy\",\"description\":\"an invented food\","
            + "\"foodNutrients\":[{\"nutrient\":{\"id\":1051,\"number\":\"255\",\"name\":\"Water\","
            + "\"unitName\":\"g\"},\"amount\":12.5}]}");
  }

  private static List<Object> money() {
    Money price = Money.of("1.20", "EUR");
    PriceList prices = PriceList.in(Currency.getInstance("EUR")).with(FLOUR, price, kilograms(1));
    Batch batch = lean().forFlour(grams(700));
    return List.of(
        price,
        prices,
        Cost.of(batch, prices).withWork(minutes(20), Money.of("24", "EUR")),
        ShoppingList.of(List.of(batch), prices, Map.of(BUTTER, grams(100))));
  }

  private static List<Object> ovens() {
    BakePiece piece =
        BakePiece.of(
            Solid.roll(millimetres(40)),
            lean().constituents(org.tourage.formula.StageKind::inPiece));
    OvenCalibration calibration =
        OvenCalibration.of(OvenModel.HOUSEHOLD).air(PROFILE, minutes(9), celsius(190));
    return List.of(
        piece,
        calibration,
        calibration.fit(),
        StepDown.of(piece, OvenModel.HOUSEHOLD, DoughKind.RICH, percent(12), celsius(140)),
        ThermalDeath.named("salmonella in bun dough"));
  }

  private static List<Object> models() {
    return List.of(
        Arrhenius.of(kilojoules(60), celsius(20), "invented"),
        RateMarks.named("sourdough bacteria"),
        Sourdough.at(celsius(26), 5, percent(1)));
  }

  private static List<Object> layers() {
    return List.of(
        LayerStack.of(LockIn.HALF, 0.25).fold(Fold.BOOK),
        CreasePlan.flat().left(Fraction.of(1, 3)),
        SheetForPieces.find(
            Shape.RECTANGLE,
            8,
            grams(70),
            millimetres(5),
            2,
            k ->
                WeighedSheet.of(
                    Extent.of(millimetres(600 * k), millimetres(300)), grams(800 * k))));
  }

  private static List<Object> refusals() {
    try {
      RecipeFile.parse("x.txt", "pieces: none\n[dough]\n5 parsecs flour\n").plan();
    } catch (RuntimeException refused) {
      return List.of(
          refused,
          new BakeryException(
              BakeryException.Reason.MISSING, "no flour is there", "none", "give some"));
    }
    throw new AssertionError("a recipe of nothing was read");
  }
}

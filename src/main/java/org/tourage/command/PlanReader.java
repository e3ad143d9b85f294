package org.tourage.command;

import static java.util.Objects.requireNonNull;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Problem;
import org.tourage.day.BakeDay;
import org.tourage.day.DayPlan;
import org.tourage.day.DayPlan.SwapKind;
import org.tourage.day.Procedure;
import org.tourage.day.Product;
import org.tourage.formula.HouseholdRecipe;
import org.tourage.ingredient.Catalogue;
import org.tourage.ingredient.Ingredient;
import org.tourage.quantity.AmountFormat;
import org.tourage.sheet.CounterSheet;
import org.tourage.sheet.SheetView;

/** Makes a day's plan of a recipe file. */
final class PlanReader {
  private final GivenValues given;

  PlanReader(RecipeFile file) {
    this.given = new GivenValues(file);
  }

  AmountFormat format() {
    given.refuse();
    return given.get(Settings.UNITS).orElseThrow();
  }

  String text() {
    List<SheetView> views = given.get(Settings.SHOW).orElseThrow();
    DayPlan plan = plan();
    AmountFormat format = format();
    CounterSheet sheet = CounterSheet.of(BakeDay.of(plan), format);
    sheet = PriceReader.of(given, catalogue(), sheet);
    if (views.contains(SheetView.COST) && given.file().prices().isEmpty()) {
      given.attempt(given.origin(Settings.SHOW), () -> sheetOf(plan, format).text(SheetView.COST));
      given.refuse();
    }
    StringBuilder out = new StringBuilder();
    for (SheetView view : views) {
      out.append(out.length() == 0 ? "" : "\n").append(sheet.text(view));
    }
    return out.toString();
  }

  private static CounterSheet sheetOf(DayPlan plan, AmountFormat format) {
    return CounterSheet.of(BakeDay.of(plan), format);
  }

  private Catalogue catalogue() {
    return OwnIngredients.of(given.file(), given.complaints());
  }

  DayPlan plan() {
    if (given.file().recipe().isEmpty()) {
      given.complain(
          Origin.line(given.file().name(), 0),
          new BakeryException(
              Reason.MISSING,
              "a recipe needs lines",
              "none",
              "write one like 500 g bread flour, under a heading like [dough]"));
    }
    given.refuse();
    Catalogue catalogue = catalogue();
    HouseholdRecipe recipe = recipe(catalogue);
    given.refuse();
    ProductReader products = new ProductReader(given);
    Procedure procedure = products.procedure();
    Product product = products.product(requireNonNull(recipe), requireNonNull(procedure));
    DayPlan plan =
        DayPlan.of(new KitchenReader(given).kitchen(), new OrderReader(given).order(product));
    plan = swap(plan, SwapKind.FLOUR, Settings.FLOUR_REPLACED, Settings.FLOUR_ON_HAND, catalogue);
    plan = swap(plan, SwapKind.FAT, Settings.FAT_REPLACED, Settings.FAT_ON_HAND, catalogue);
    plan =
        swap(plan, SwapKind.LIQUID, Settings.LIQUID_REPLACED, Settings.LIQUID_ON_HAND, catalogue);
    plan = given.get(Settings.PLANT_BASED).orElse(false) ? plan.fromPlants() : plan;
    given.get(Settings.UNITS);
    given.get(Settings.SHOW);
    given.get(Settings.CURRENCY);
    given.unused();
    given.refuse();
    return plan;
  }

  private @Nullable HouseholdRecipe recipe(Catalogue catalogue) {
    try {
      return HouseholdRecipe.readKeepingUnknown(
          given.get(Settings.TITLE).orElseThrow(),
          given.file().recipe().stream()
              .map(line -> new HouseholdRecipe.Row(line.number(), line.text()))
              .toList(),
          catalogue,
          given.get(Settings.CUPS).orElseThrow());
    } catch (BakeryException wrong) {
      for (Problem problem : wrong.problems()) {
        given.complain(Origin.line(given.file().name(), problem.line()), problem.exception());
      }
      if (wrong.problems().isEmpty()) {
        given.complain(
            Origin.line(given.file().name(), given.file().recipe().get(0).number()), wrong);
      }
      return null;
    }
  }

  private DayPlan swap(
      DayPlan plan,
      SwapKind kind,
      Setting<String> replaced,
      Setting<String> onHand,
      Catalogue catalogue) {
    Optional<String> to = given.get(onHand);
    if (to.isEmpty()) {
      return plan;
    }
    Optional<Ingredient> from =
        given.get(replaced).flatMap(name -> find(catalogue, name, replaced));
    return find(catalogue, to.get(), onHand)
        .map(i -> plan.with(new DayPlan.Swap(kind, from.orElse(null), i)))
        .orElse(plan);
  }

  private Optional<Ingredient> find(Catalogue catalogue, String name, Setting<?> setting) {
    try {
      return Optional.of(catalogue.require(name));
    } catch (BakeryException unknown) {
      given.complain(given.origin(setting), unknown);
      return Optional.empty();
    }
  }
}

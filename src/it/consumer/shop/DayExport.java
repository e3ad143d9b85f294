package shop;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.day.BakeDay;
import org.tourage.day.DayPlan;
import org.tourage.day.Kitchen;
import org.tourage.day.MakeUp;
import org.tourage.day.Order;
import org.tourage.day.Place;
import org.tourage.day.Procedure;
import org.tourage.day.Product;
import org.tourage.day.Step;
import org.tourage.day.Timetable;
import org.tourage.formula.Formula;
import org.tourage.formula.WeighedLine;
import org.tourage.label.AllergenSummary;
import org.tourage.label.Nutrition;
import org.tourage.label.NutritionFacts;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LaminationPlan;
import org.tourage.lamination.LockIn;
import org.tourage.makeup.Shape;
import org.tourage.oven.Bake;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.BakeryUnits;

/** Formulas from rows of data, days from formulas, and all results as plain data of one's own. */
public final class DayExport {
  private DayExport() {}

  /** A row as a database would hold it: product, part, ingredient, percent of the flour. */
  record Row(String product, String part, String ingredient, double percent) {}

  /** What leaves the library: texts and numbers, the unit in the name. */
  record Plain(String product, List<String> fields) {}

  private static final List<Row> ROWS =
      List.of(
          new Row("Pier rolls", "dough", "bread flour", 100),
          new Row("Pier rolls", "dough", "water", 63),
          new Row("Pier rolls", "dough", "salt", 2),
          new Row("Pier rolls", "dough", "instant yeast", 0.8),
          new Row("Quay squares", "dough", "bread flour", 80),
          new Row("Quay squares", "dough", "all-purpose flour", 20),
          new Row("Quay squares", "dough", "water", 45),
          new Row("Quay squares", "dough", "milk", 8),
          new Row("Quay squares", "dough", "salt", 1.9),
          new Row("Quay squares", "dough", "instant yeast", 1.2),
          new Row("Quay squares", "roll-in", "butter", 48),
          new Row("Quay squares", "finish", "egg", 2));

  static Formula formula(String product) {
    return Formula.byPercent(
        product,
        f -> {
          for (Row row : ROWS) {
            if (row.product().equals(product)) {
              switch (row.part()) {
                case "roll-in" -> f.rollIn(row.ingredient(), Amounts.percent(row.percent()));
                case "finish" -> f.finish(row.ingredient(), Amounts.percent(row.percent()));
                default -> f.line(row.ingredient(), Amounts.percent(row.percent()));
              }
            }
          }
        });
  }

  static BakeDay day(String product) {
    Formula formula = formula(product);
    OvenProfile profile = OvenProfile.of(Amounts.celsius(200), Amounts.minutes(16));
    Step mix = Step.mix(Amounts.minutes(12), Amounts.celsius(24));
    Step proof = Step.proof(Amounts.minutes(80)).in(Place.PROOFER);
    boolean layered = ROWS.stream().anyMatch(r -> r.product().equals(product) && r.part().equals("roll-in"));
    Product made =
        layered
            ? Product.of(
                    formula,
                    Procedure.of(
                        mix,
                        Step.chill(Amounts.hours(1)),
                        Step.enclose(LockIn.HALF, Amounts.minutes(15)),
                        Step.turn(Amounts.minutes(15), Fold.BOOK, Fold.LETTER),
                        Step.retard(Amounts.hours(11)),
                        Step.sheet(Amounts.minutes(20)),
                        Step.cut(Amounts.minutes(10)),
                        proof,
                        Step.bake(profile)))
                .madeUp(MakeUp.sheet(LaminationPlan.Setup.SMALL_BENCH).cutInto(Shape.RECTANGLE))
            : Product.of(formula, Procedure.of(mix, proof, Step.bake(profile)));
    return BakeDay.of(
        DayPlan.of(Kitchen.USUAL, Order.pieces(made, 18, Amounts.grams(70))));
  }

  static Plain export(String product) {
    BakeDay day = day(product);
    List<String> out = new ArrayList<>();
    for (WeighedLine line : day.batch().lines()) {
      add(out, "weight." + line.stage() + "." + line.ingredient().id() + ".g", line.toWeigh().in(BakeryUnits.GRAM));
    }
    add(out, "scaling.g", day.scalingWeight().in(BakeryUnits.GRAM));
    day.water().found().ifPresent(w -> out.add("water=" + w.working().lines().size()));
    day.lamination().found().ifPresent(l -> out.add("fatLayers=" + l.sequence().fatLayers()));
    day.cutting().found().ifPresent(c -> out.add("cut=" + c.pieces()));
    day.rise().found().ifPresent(r -> add(out, "rise", r.end().growth()));
    day.bake()
        .found()
        .ifPresent(
            b -> {
              for (Bake.Look look : b.bake().looks()) {
                add(out, "core." + look.time().in(BakeryUnits.SECOND) + ".degC", look.core().in(BakeryUnits.CELSIUS));
              }
            });
    for (Timetable.Dated task : day.timetable().on(LocalDate.of(2027, 3, 27), ZoneId.of("Europe/Oslo"))) {
      out.add(task.start() + " " + task.entry().task().name());
    }
    NutritionFacts facts = Nutrition.of(day.batch()).per100Grams();
    out.add("nutrition=" + facts);
    out.add("allergens=" + AllergenSummary.of(day.batch().formula()));
    for (Advice advice : day.advice()) {
      out.add(advice.severity() + " " + advice.code());
    }
    return new Plain(product, List.copyOf(out));
  }

  private static void add(List<String> out, String name, double value) {
    out.add(name + "=" + Double.toString(value));
  }

  /**
   * Works all products in eight threads, in several locales, and compares.
   *
   * @param args none
   * @throws Exception if a thread fails
   */
  public static void main(String[] args) throws Exception {
    List<Plain> once = List.of(export("Pier rolls"), export("Quay squares"));
    Locale.setDefault(Locale.forLanguageTag("ar-EG"));
    ExecutorService pool = Executors.newFixedThreadPool(8);
    try {
      List<Callable<Plain>> jobs = new ArrayList<>();
      for (int k = 0; k < 16; k++) {
        Plain expected = once.get(k % 2);
        jobs.add(() -> export(expected.product()));
      }
      int equal = 0;
      List<Future<Plain>> results = pool.invokeAll(jobs);
      for (int k = 0; k < results.size(); k++) {
        equal += results.get(k).get().equals(once.get(k % 2)) ? 1 : 0;
      }
      System.out.println("equal " + equal + " of " + jobs.size());
    } finally {
      pool.shutdown();
    }
    try {
      formula("no such product");
    } catch (BakeryException refused) {
      System.out.println("refused " + refused.reason());
    }
    for (Plain plain : once) {
      System.out.println(plain.product());
      plain.fields().forEach(System.out::println);
    }
  }
}

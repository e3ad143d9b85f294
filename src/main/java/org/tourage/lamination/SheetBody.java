package org.tourage.lamination;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MINUTE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.physics.Air;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.HeatContent;
import org.tourage.physics.LayeredSlab;
import org.tourage.physics.LayeredSlab.Layer;
import org.tourage.physics.LayeredSlab.State;
import org.tourage.physics.LayeredSlab.Surface;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Given;

/**
 * A laminated sheet or packet as a body that warms and cools: how long it may lie on the bench, how
 * long it must chill, how long it needs to temper. Dough and fat are one body of mean properties;
 * heat goes through the layers one after another (series model), and the roll-in fat melts along
 * its curve. Heat goes in and out by the two faces only, so a small thick packet is a little
 * quicker at its edges.
 *
 * <p>A sheet is judged by the tenth of its thickness that is warmest or coldest, not by its skin,
 * which takes the temperature of the bench at once.
 *
 * @param thickness the thickness of the sheet
 * @param conductivity across the layers, W/(m·K)
 * @param density kg/m³
 * @param specificHeat without melting, J/(kg·K)
 * @param latent heat of melting all solid fat, J for each kg of the sheet
 * @param fat the curve of the fat
 */
public record SheetBody(
    Amount<Length> thickness,
    double conductivity,
    double density,
    double specificHeat,
    double latent,
    FatCurve fat)
    implements Serializable {
  private static final Amount<Temperature> REFERENCE = CELSIUS.amount(15);
  private static final int SHEET_CELLS = 60;
  private static final int BENCH_CELLS = 12;

  /** A question that is not answered within two days has no answer. */
  private static final double LONGEST_SECONDS = 48 * 3600.0;

  /**
   * Checks the figures.
   *
   * @param thickness the thickness of the sheet
   * @param conductivity across the layers, W/(m·K)
   * @param density kg/m³
   * @param specificHeat without melting, J/(kg·K)
   * @param latent heat of melting all solid fat, J for each kg of the sheet
   * @param fat the curve of the fat
   */
  public SheetBody {
    requireNonNull(thickness, "thickness");
    requireNonNull(fat, "fat");
    boolean fits = conductivity > 0 && density > 0 && specificHeat > 0 && latent >= 0;
    if (thickness.value() <= 0 || !fits) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a sheet can't have these properties",
          thickness
              + ", "
              + conductivity
              + " W/(m·K), "
              + density
              + " kg/m³, "
              + specificHeat
              + " J/(kg·K)",
          "give positive figures");
    }
  }

  /**
   * The body of a plan's sheet at some thickness.
   *
   * @param plan the plan
   * @param thickness the thickness
   * @param dough what the dough is made of
   * @param fat what the roll-in is made of
   * @param curve the curve of its fat
   * @return the body
   */
  public static SheetBody of(
      LaminationPlan plan,
      Quantity<Length> thickness,
      Constituents dough,
      Constituents fat,
      FatCurve curve) {
    requireNonNull(plan, "plan");
    requireNonNull(thickness, "thickness");
    requireNonNull(dough, "dough");
    requireNonNull(fat, "fat");
    requireNonNull(curve, "curve");
    double doughMass = plan.dough().in(KILOGRAM);
    double fatMass = plan.fat().in(KILOGRAM);
    double doughVolume = doughMass / plan.doughDensity().in(KILOGRAM_PER_CUBIC_METRE);
    double fatVolume = fatMass / plan.fatDensity().in(KILOGRAM_PER_CUBIC_METRE);
    double volume = doughVolume + fatVolume;
    double mass = doughMass + fatMass;
    double resistance =
        doughVolume / ChoiOkos1986.conductivity(dough, REFERENCE)
            + fatVolume / ChoiOkos1986.conductivity(fat, REFERENCE);
    double specificHeat =
        (doughMass * ChoiOkos1986.specificHeat(dough, REFERENCE)
                + fatMass * ChoiOkos1986.specificHeat(fat, REFERENCE))
            / mass;
    double latent = fatMass / mass * fat.fat() / fat.sum() * curve.fusion();
    return new SheetBody(
        Given.length("the thickness", thickness),
        volume / resistance,
        mass / volume,
        specificHeat,
        latent,
        curve);
  }

  /**
   * The body of a plan's sheet at some thickness, made of what the batch is made of.
   *
   * @param plan the plan
   * @param thickness the thickness
   * @param batch the batch that the plan was made for
   * @param curve the curve of the roll-in fat
   * @return the body
   * @throws BakeryException if the batch has no roll-in
   */
  public static SheetBody of(
      LaminationPlan plan, Quantity<Length> thickness, Batch batch, FatCurve curve) {
    requireNonNull(plan, "plan");
    requireNonNull(thickness, "thickness");
    requireNonNull(batch, "batch");
    requireNonNull(curve, "curve");
    Formula formula = batch.formula();
    return of(
        plan,
        thickness,
        formula.constituents(StageKind::inDough),
        formula.constituents(k -> k == StageKind.ROLL_IN),
        curve);
  }

  /** The heat content of the sheet with its melting fat. */
  private record Content(double specificHeat, double latent, FatCurve fat) implements HeatContent {
    @Override
    public double heat(double celsius) {
      return specificHeat * celsius + latent * (1 - fat.solidPercent(celsius) / 100);
    }

    @Override
    public double slope(double celsius) {
      return specificHeat + latent * fat.fallPerKelvin(celsius) / 100;
    }
  }

  /**
   * How long the sheet may lie until its warmest tenth leaves the window of the fat.
   *
   * @param start the temperature of the sheet
   * @param bench what it lies on, as warm as the air
   * @param air the air
   * @return the time in minutes; 0 if it is too warm already; empty if it never gets too warm
   */
  public Optional<Amount<Time>> untilTooSoft(Quantity<Temperature> start, Bench bench, Air air) {
    requireNonNull(start, "start");
    requireNonNull(bench, "bench");
    requireNonNull(air, "air");
    return until(start, bench, air, tooSoft()).get(0);
  }

  /**
   * How long the sheet must lie in the cold until all of it is at a temperature or below.
   *
   * @param start the temperature of the sheet
   * @param wanted the temperature wanted in its warmest tenth
   * @param bench what it lies on, as cold as the air
   * @param air the air of the refrigerator or freezer
   * @return the time in minutes; 0 if it is there already; empty if it never gets there
   */
  public Optional<Amount<Time>> untilChilled(
      Quantity<Temperature> start, Quantity<Temperature> wanted, Bench bench, Air air) {
    requireNonNull(start, "start");
    requireNonNull(wanted, "wanted");
    requireNonNull(bench, "bench");
    requireNonNull(air, "air");
    double limit = CELSIUS.measure("the wanted", wanted);
    return until(start, bench, air, s -> limit - s.warmestTenth(0)).get(0);
  }

  /**
   * How long a cold sheet must lie until all of it has come into the window of the fat.
   *
   * @param start the temperature of the sheet
   * @param bench what it lies on, as warm as the air
   * @param air the air
   * @return the time in minutes; 0 if it is there already; empty if it never gets there
   */
  public Optional<Amount<Time>> untilTempered(Quantity<Temperature> start, Bench bench, Air air) {
    requireNonNull(start, "start");
    requireNonNull(bench, "bench");
    requireNonNull(air, "air");
    return until(start, bench, air, tempered()).get(0);
  }

  private ToDoubleFunction<State> tempered() {
    double limit = fat.window().low().in(CELSIUS);
    return s -> s.coldestTenth(0) - limit;
  }

  private ToDoubleFunction<State> tooSoft() {
    double limit = fat.window().high().in(CELSIUS);
    return s -> s.warmestTenth(0) - limit;
  }

  /** The two times on the bench, of one run: when it can be rolled, when it is too soft. */
  record OnBench(Optional<Amount<Time>> tempered, Optional<Amount<Time>> tooSoft) {}

  OnBench onBench(Quantity<Temperature> start, Bench bench, Air air) {
    List<Optional<Amount<Time>>> times = until(start, bench, air, tempered(), tooSoft());
    return new OnBench(times.get(0), times.get(1));
  }

  private static final class Crossing {
    private final ToDoubleFunction<State> measure;
    private double before = Double.NaN;
    private double seconds;
    private double at = Double.NaN;

    Crossing(ToDoubleFunction<State> measure) {
      this.measure = measure;
    }

    boolean open() {
      return Double.isNaN(at);
    }

    void look(State state) {
      double now = measure.applyAsDouble(state);
      if (now >= 0) {
        double part = Double.isNaN(before) ? 1 : before / (before - now);
        at = seconds + part * (state.seconds() - seconds);
      }
      before = now;
      seconds = state.seconds();
    }

    Optional<Amount<Time>> time() {
      return open() ? Optional.empty() : Optional.of(MINUTE.amount(at / 60));
    }
  }

  /**
   * For each measure the first time at which it is not below 0, between two steps on a straight
   * line.
   */
  @SafeVarargs
  private List<Optional<Amount<Time>>> until(
      Quantity<Temperature> start, Bench bench, Air air, ToDoubleFunction<State>... measures) {
    List<Crossing> crossings = Stream.of(measures).map(Crossing::new).toList();
    List<Amount<Temperature>> temperatures = new ArrayList<>();
    temperatures.add(Given.temperature("the start", start));
    // the sheet is layer 0, so a bench lies above it here and the air of the room below
    List<Layer> layers = new ArrayList<>();
    layers.add(
        new Layer(
            thickness.in(METRE),
            conductivity,
            density,
            new Content(specificHeat, latent, fat),
            SHEET_CELLS));
    if (bench != Bench.RACK) {
      layers.add(
          new Layer(
              bench.thickness(),
              bench.conductivity(),
              bench.density(),
              HeatContent.constant(bench.specificHeat()),
              BENCH_CELLS));
      temperatures.add(air.temperature());
    }
    Surface surface = air.surface();
    new LayeredSlab(layers, surface, surface)
        .run(
            temperatures,
            LONGEST_SECONDS,
            state -> {
              crossings.stream().filter(Crossing::open).forEach(c -> c.look(state));
              return crossings.stream().anyMatch(Crossing::open);
            });
    return crossings.stream().map(Crossing::time).toList();
  }
}

package org.tourage.physics;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.quantity.Amount;

/**
 * Heat through a stack of flat layers in time: one-dimensional conduction (Fourier) with convection
 * on both faces and materials that may melt. Finite volumes; the trapezoidal rule on the heat
 * content, so that the energy is conserved through melting, after four implicit starting steps;
 * steps chosen by the change of temperature. Checked against the series solutions of H.S. Carslaw
 * and J.C. Jaeger, Conduction of Heat in Solids, 2nd ed., 1959 (from memory).
 *
 * @param layers the layers, bottom to top
 * @param below what the bottom face meets
 * @param above what the top face meets
 */
public record LayeredSlab(List<Layer> layers, Surface below, Surface above)
    implements Serializable {
  private static final int STARTING_STEPS = 4;
  private static final int NEWTON_STEPS = 30;
  private static final double NEWTON_KELVINS = 1e-9;

  /** Greatest change of a temperature in a step, as a share of the span of temperatures. */
  private static final double CHANGE = 0.006;

  /** A slab that moves less than this share of the span in an hour is at rest. */
  private static final double AT_REST = 1e-5;

  /**
   * A layer.
   *
   * @param thickness metres, positive
   * @param conductivity watts per metre and kelvin, positive
   * @param density kilograms per cubic metre, positive
   * @param heat the heat content by temperature
   * @param cells how many cells it is cut into, at least 1
   */
  public record Layer(
      double thickness, double conductivity, double density, HeatContent heat, int cells)
      implements Serializable {
    /**
     * Checks the figures.
     *
     * @param thickness metres, positive
     * @param conductivity watts per metre and kelvin, positive
     * @param density kilograms per cubic metre, positive
     * @param heat the heat content by temperature
     * @param cells how many cells it is cut into, at least 1
     */
    public Layer {
      requireNonNull(heat, "heat");
      boolean fits = thickness > 0 && conductivity > 0 && density > 0 && cells > 0;
      if (!fits || Double.isInfinite(thickness + conductivity + density)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a layer must have thickness, conductivity and density",
            thickness
                + " m, "
                + conductivity
                + " W/(m·K), "
                + density
                + " kg/m³, "
                + cells
                + " cells",
            "give positive figures");
      }
    }
  }

  /**
   * What a face meets.
   *
   * @param coefficient heat transfer coefficient in watts per square metre and kelvin; 0 for none
   * @param celsius the temperature of what it meets, in °C
   */
  public record Surface(double coefficient, double celsius) implements Serializable {
    /**
     * Checks the coefficient.
     *
     * @param coefficient heat transfer coefficient in watts per square metre and kelvin; 0 for none
     * @param celsius the temperature of what it meets, in °C
     */
    public Surface {
      if (!(coefficient >= 0) || Double.isInfinite(coefficient) || !Double.isFinite(celsius)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "no such surface",
            coefficient + " W/(m²·K) to " + celsius + " °C",
            "give a coefficient from 0 up");
      }
    }

    /**
     * A face that meets air or another fluid.
     *
     * @param coefficient heat transfer coefficient in watts per square metre and kelvin
     * @param temperature the temperature of the fluid
     * @return the surface
     */
    public static Surface of(double coefficient, Quantity<Temperature> temperature) {
      return new Surface(coefficient, CELSIUS.measure("the temperature", temperature));
    }

    /** A face through which no heat goes. */
    public static final Surface INSULATED = new Surface(0, 0);
  }

  /**
   * Copies the list and checks that there is a layer.
   *
   * @param layers the layers, bottom to top
   * @param below what the bottom face meets
   * @param above what the top face meets
   */
  public LayeredSlab {
    layers = List.copyOf(layers);
    requireNonNull(below, "below");
    requireNonNull(above, "above");
    if (layers.isEmpty()) {
      throw new BakeryException(Reason.MISSING, "a slab needs a layer", "none", "give one");
    }
  }

  /** Watches a run; it sees the state at the start and after every step. */
  @FunctionalInterface
  public interface Watch {
    /**
     * Looks at the state.
     *
     * @param state the state
     * @return false to stop
     */
    boolean goOn(State state);
  }

  /**
   * Runs in time until the watch stops it, the time is over or the slab is at rest.
   *
   * @param start the temperature of each layer at the start, bottom to top
   * @param seconds the longest time
   * @param watch looks at each state
   * @return the last state
   * @throws BakeryException if there are not as many temperatures as layers
   */
  public State run(List<? extends Quantity<Temperature>> start, double seconds, Watch watch) {
    if (start.size() != layers.size()) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "each layer needs a temperature at the start",
          start.size() + " temperatures for " + layers.size() + " layers",
          "give one for each, bottom to top");
    }
    State state = new State(start);
    boolean on = watch.goOn(state);
    double step = state.firstStep();
    int steps = 0;
    while (on && state.seconds < seconds) {
      double wanted = Math.min(step, seconds - state.seconds);
      boolean starting = steps < STARTING_STEPS;
      double change = state.advance(wanted, starting);
      double limit = CHANGE * state.span;
      if (change > 2 * limit && wanted > 1e-6) {
        state.undo();
        step = wanted / 2;
        continue;
      }
      steps++;
      boolean atRest = change / wanted * 3600 < AT_REST * state.span && steps > STARTING_STEPS;
      on = watch.goOn(state) && !atRest;
      if (!starting && change < limit) {
        step = Math.max(step, wanted) * Math.min(1.3, limit / Math.max(change, limit / 2));
      }
    }
    return state;
  }

  /** The temperatures of a slab at one time. It changes while a run goes on. */
  public final class State {
    private final int n;
    private final int[] firstCell;
    private final double[] size;
    private final double[] density;
    private final HeatContent[] content;
    private final double[] conductance;
    private final double belowConductance;
    private final double aboveConductance;
    private final double span;
    private double[] t;
    private double[] before;
    private double seconds;
    private double secondsBefore;

    private State(List<? extends Quantity<Temperature>> start) {
      n = layers.stream().mapToInt(Layer::cells).sum();
      firstCell = new int[layers.size() + 1];
      size = new double[n];
      density = new double[n];
      content = new HeatContent[n];
      double[] k = new double[n];
      t = new double[n];
      int cell = 0;
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int l = 0; l < layers.size(); l++) {
        Layer layer = layers.get(l);
        double celsius = CELSIUS.measure(start.get(l));
        low = Math.min(low, celsius);
        high = Math.max(high, celsius);
        firstCell[l] = cell;
        for (int i = 0; i < layer.cells; i++, cell++) {
          size[cell] = layer.thickness / layer.cells;
          density[cell] = layer.density;
          content[cell] = layer.heat;
          k[cell] = layer.conductivity;
          t[cell] = celsius;
        }
      }
      firstCell[layers.size()] = n;
      conductance = new double[n];
      for (int i = 0; i + 1 < n; i++) {
        conductance[i] = 1 / (size[i] / (2 * k[i]) + size[i + 1] / (2 * k[i + 1]));
      }
      belowConductance = toSurface(below, size[0] / (2 * k[0]));
      aboveConductance = toSurface(above, size[n - 1] / (2 * k[n - 1]));
      for (Surface surface : new Surface[] {below, above}) {
        if (surface.coefficient > 0) {
          low = Math.min(low, surface.celsius);
          high = Math.max(high, surface.celsius);
        }
      }
      span = Math.max(high - low, 1e-6);
      before = t.clone();
    }

    private double toSurface(Surface surface, double resistance) {
      return surface.coefficient == 0 ? 0 : 1 / (1 / surface.coefficient + resistance);
    }

    /** The quickest cell decides how small the first steps are. */
    private double firstStep() {
      double quickest = Double.POSITIVE_INFINITY;
      for (int i = 0; i < n; i++) {
        double out = conductance[i] + (i > 0 ? conductance[i - 1] : 0);
        out += i == 0 ? belowConductance : 0;
        out += i == n - 1 ? aboveConductance : 0;
        quickest = Math.min(quickest, density[i] * size[i] * content[i].slope(t[i]) / out);
      }
      return quickest / 10;
    }

    /** One step; returns the greatest change of a temperature. */
    private double advance(double dt, boolean implicit) {
      before = t.clone();
      secondsBefore = seconds;
      double weight = implicit ? 1 : 0.5;
      double[] known = new double[n];
      for (int i = 0; i < n; i++) {
        known[i] =
            density[i] * size[i] / dt * content[i].heat(before[i])
                + (1 - weight) * inflow(before, i);
      }
      double[] guess = t.clone();
      for (int round = 0; round < NEWTON_STEPS; round++) {
        if (newton(guess, known, dt, weight) < NEWTON_KELVINS) {
          break;
        }
      }
      t = guess;
      seconds += dt;
      double change = 0;
      for (int i = 0; i < n; i++) {
        change = Math.max(change, Math.abs(t[i] - before[i]));
      }
      return change;
    }

    private void undo() {
      t = before;
      seconds = secondsBefore;
    }

    private double inflow(double[] at, int i) {
      double sum =
          i > 0
              ? conductance[i - 1] * (at[i - 1] - at[i])
              : belowConductance * (below.celsius - at[i]);
      return sum
          + (i + 1 < n
              ? conductance[i] * (at[i + 1] - at[i])
              : aboveConductance * (above.celsius - at[i]));
    }

    /** One Newton step by the Thomas algorithm; returns the greatest correction. */
    private double newton(double[] guess, double[] known, double dt, double weight) {
      double[] upper = new double[n];
      double[] right = new double[n];
      for (int i = 0; i < n; i++) {
        double mass = density[i] * size[i] / dt;
        double residual = mass * content[i].heat(guess[i]) - weight * inflow(guess, i) - known[i];
        double toBelow = i > 0 ? conductance[i - 1] : belowConductance;
        double toAbove = i + 1 < n ? conductance[i] : aboveConductance;
        double diagonal = mass * content[i].slope(guess[i]) + weight * (toBelow + toAbove);
        double lower = i > 0 ? -weight * conductance[i - 1] : 0;
        double pivot = diagonal - (i > 0 ? lower * upper[i - 1] : 0);
        upper[i] = i + 1 < n ? -weight * conductance[i] / pivot : 0;
        right[i] = (-residual - (i > 0 ? lower * right[i - 1] : 0)) / pivot;
      }
      double greatest = 0;
      for (int i = n - 1; i >= 0; i--) {
        right[i] -= i + 1 < n ? upper[i] * right[i + 1] : 0;
        guess[i] += right[i];
        greatest = Math.max(greatest, Math.abs(right[i]));
      }
      return greatest;
    }

    /**
     * The time since the start.
     *
     * @return seconds
     */
    public double seconds() {
      return seconds;
    }

    /**
     * The coldest point of a layer, faces included.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double coldest(int layer) {
      return extreme(layer, -1);
    }

    /**
     * The warmest point of a layer, faces included.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double warmest(int layer) {
      return extreme(layer, 1);
    }

    private double extreme(int layer, int sign) {
      double found = Math.max(sign * bottomFace(layer), sign * topFace(layer));
      for (int i = firstCell[layer]; i < firstCell[layer + 1]; i++) {
        found = Math.max(found, sign * t[i]);
      }
      return sign * found;
    }

    /**
     * The coldest tenth of a layer: the lowest mean over a tenth of its thickness.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double coldestTenth(int layer) {
      return extremeTenth(layer, -1);
    }

    /**
     * The warmest tenth of a layer: the highest mean over a tenth of its thickness.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double warmestTenth(int layer) {
      return extremeTenth(layer, 1);
    }

    private double extremeTenth(int layer, int sign) {
      int cells = Math.max(1, (firstCell[layer + 1] - firstCell[layer]) / 10);
      double found = Double.NEGATIVE_INFINITY;
      for (int from = firstCell[layer]; from + cells <= firstCell[layer + 1]; from++) {
        double sum = 0;
        for (int i = from; i < from + cells; i++) {
          sum += t[i];
        }
        found = Math.max(found, sign * sum / cells);
      }
      return sign * found;
    }

    /**
     * The bottom face of a layer.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double bottomFace(int layer) {
      int i = firstCell[layer];
      double half = size[i] / (2 * layers.get(layer).conductivity);
      double flow =
          i > 0
              ? conductance[i - 1] * (t[i - 1] - t[i])
              : belowConductance * (below.celsius - t[i]);
      return t[i] + flow * half;
    }

    /**
     * The top face of a layer.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double topFace(int layer) {
      int i = firstCell[layer + 1] - 1;
      double half = size[i] / (2 * layers.get(layer).conductivity);
      double flow =
          i + 1 < n
              ? conductance[i] * (t[i + 1] - t[i])
              : aboveConductance * (above.celsius - t[i]);
      return t[i] + flow * half;
    }

    /**
     * The mean temperature of a layer.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double mean(int layer) {
      double sum = 0;
      for (int i = firstCell[layer]; i < firstCell[layer + 1]; i++) {
        sum += t[i];
      }
      return sum / (firstCell[layer + 1] - firstCell[layer]);
    }

    /**
     * The middle of a layer.
     *
     * @param layer its place from the bottom, from 0
     * @return °C
     */
    public double middle(int layer) {
      int from = firstCell[layer];
      int cells = firstCell[layer + 1] - from;
      int m = from + cells / 2;
      return cells % 2 == 1 ? t[m] : (t[m - 1] + t[m]) / 2;
    }

    /**
     * The heat held by all layers.
     *
     * @return joules per square metre above any fixed level
     */
    public double heat() {
      double sum = 0;
      for (int i = 0; i < n; i++) {
        sum += density[i] * size[i] * content[i].heat(t[i]);
      }
      return sum;
    }

    /** The middles of the layers, bottom to top. */
    @Override
    public String toString() {
      StringBuilder out = new StringBuilder("after " + Math.round(seconds) + " s:");
      for (int l = 0; l < layers.size(); l++) {
        out.append(' ').append(Amount.from(CELSIUS.amount(middle(l))));
      }
      return out.toString();
    }
  }
}

package org.tourage.physics;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;

import java.io.Serializable;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Heat in a body of one material that meets air of changing temperature, coupled with a process in
 * it whose rate depends on the local temperature and which may give off heat.
 *
 * <p>The conduction is taken apart into modes (Galerkin's method with Legendre polynomials), each
 * of which is followed exactly in time; the process is integrated at the points of a Gauss rule by
 * Simpson's rule, and its heat enters by exponential time differencing of second order (S.M. Cox
 * and P.C. Matthews, J. Comput. Phys. 176 (2002) 430, from memory). Steps are chosen by the error.
 * Checked against the series solutions of H.S. Carslaw and J.C. Jaeger, Conduction of Heat in
 * Solids, 2nd ed., 1959 (from memory): within 0.5 % from a Fourier number of 0.01 on; before, the
 * modes may swing by less than 1 % of a jump. The properties are constant, and every face meets the
 * same.
 *
 * @param solid the body
 * @param conductivity W/(m·K), positive
 * @param volumetricHeat density times specific heat, J/(m³·K), positive
 * @param coefficient from the surface to the air, covers included, W/(m²·K); 0 for no exchange
 */
public record SolidConduction(
    Solid solid, double conductivity, double volumetricHeat, double coefficient)
    implements Serializable {
  /**
   * A process that goes on in the body.
   *
   * <p>Its progress grows by the rate times the seconds.
   */
  @FunctionalInterface
  public interface LocalProcess {
    /** Nothing goes on. */
    LocalProcess NONE = celsius -> 0;

    /**
     * How fast it goes.
     *
     * @param celsius the temperature in °C
     * @return the rate, not negative
     */
    double rate(double celsius);

    /**
     * The same process with its constants worked out once, for a run over many points.
     *
     * @return a process with the same rates, to the last bit
     */
    default LocalProcess prepared() {
      return this;
    }
  }

  /**
   * Checks the figures.
   *
   * @param solid the body
   * @param conductivity W/(m·K), positive
   * @param volumetricHeat density times specific heat, J/(m³·K), positive
   * @param coefficient from the surface to the air, covers included, W/(m²·K); 0 for no exchange
   */
  public SolidConduction {
    requireNonNull(solid, "solid");
    boolean fits = conductivity > 0 && volumetricHeat > 0 && coefficient >= 0;
    if (!fits || Double.isInfinite(conductivity + volumetricHeat + coefficient)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a body can't have these properties",
          conductivity + " W/(m·K), " + volumetricHeat + " J/(m³·K), " + coefficient + " W/(m²·K)",
          "give positive figures");
    }
  }

  /**
   * The state of the body at one time.
   *
   * @param seconds the time since the start
   * @param core °C in the middle
   * @param surface °C in the middle of the nearest face
   * @param mean °C over the volume
   * @param temperatures °C at the points
   * @param progress the progress at the points
   * @param weights what share of the body each point stands for; some stand for none
   */
  public record State(
      double seconds,
      double core,
      double surface,
      double mean,
      List<Double> temperatures,
      List<Double> progress,
      List<Double> weights)
      implements Serializable {
    /**
     * Copies the lists.
     *
     * @param seconds the time since the start
     * @param core °C in the middle
     * @param surface °C in the middle of the nearest face
     * @param mean °C over the volume
     * @param temperatures °C at the points
     * @param progress the progress at the points
     * @param weights what share of the body each point stands for; some stand for none
     */
    public State {
      temperatures = List.copyOf(temperatures);
      progress = List.copyOf(progress);
      weights = List.copyOf(weights);
    }

    /**
     * The mean progress over the volume.
     *
     * @return the progress
     */
    public double meanProgress() {
      double sum = 0;
      for (int i = 0; i < weights.size(); i++) {
        sum += weights.get(i) * progress.get(i);
      }
      return sum;
    }
  }

  /**
   * Follows the body from a uniform temperature.
   *
   * @param start its temperature at the start
   * @param surroundings the temperature of the air
   * @param process what goes on in it
   * @param kelvinPerProgress how much one unit of progress would warm it if no heat were lost
   * @param times when to look, rising, from 0 on, none beyond the end of the surroundings
   * @return the state at each of these times
   * @throws BakeryException if the times do not rise or go beyond the end
   */
  public List<State> run(
      Quantity<Temperature> start,
      TemperatureHistory surroundings,
      LocalProcess process,
      double kelvinPerProgress,
      List<? extends Quantity<Time>> times) {
    return new ConductionRun(
            this, process, kelvinPerProgress, CELSIUS.measure("the start", start), null)
        .follow(surroundings, times);
  }

  /**
   * Follows the body on from a state of the same body, perhaps with another cover or in other air.
   *
   * @param from the state, of a body of the same shape
   * @param surroundings the temperature of the air from now on
   * @param process what goes on in it
   * @param kelvinPerProgress how much one unit of progress would warm it if no heat were lost
   * @param times when to look, rising, from 0 (now) on
   * @return the state at each of these times
   * @throws BakeryException if the times do not rise or go beyond the end, or the state is of
   *     another kind of body
   */
  public List<State> run(
      State from,
      TemperatureHistory surroundings,
      LocalProcess process,
      double kelvinPerProgress,
      List<? extends Quantity<Time>> times) {
    return new ConductionRun(this, process, kelvinPerProgress, from.mean, from)
        .follow(surroundings, times);
  }
}

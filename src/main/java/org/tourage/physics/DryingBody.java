package org.tourage.physics;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.Arrays;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * A wet porous body that is heated: conduction in a slab, a cylinder or a sphere, convection and
 * radiation at its surface, water that evaporates from the surface or condenses on it, and a front
 * inside at which the rest of the water boils away and behind which the body is dry. The vapour
 * leaves through the dry part at once, at the temperature at which it formed.
 *
 * <p>Finite volumes, finer towards the surface; unknown is the heat held by each cell, so that
 * boiling is exact (the enthalpy method: V. Alexiades and A.D. Solomon, Mathematical Modeling of
 * Melting and Freezing Processes, 1993, from memory). In time an L-stable diagonally implicit
 * method of second order (R. Alexander, SIAM J. Numer. Anal. 14 (1977) 1006, from memory), each
 * stage by Newton's method. Heat and mass balances are kept and given with each result.
 *
 * @param dimensions 1 for a slab, 2 for a long cylinder, 3 for a sphere
 * @param half from the middle to the surface, m
 * @param material what it is made of
 * @param cells how many cells, at least 8
 * @param steps how many full steps for the whole time, at least 20; the first are much smaller
 */
public record DryingBody(int dimensions, double half, Material material, int cells, int steps)
    implements Serializable {
  /** Specific heat of water in the body, J/(kg·K): common handbook value (from memory). */
  public static final double WATER_HEAT = 4200;

  /** Heat of vaporisation at 0 °C and its fall to 100 °C, J/kg and J/(kg·K): steam tables. */
  private static final double LATENT_ZERO = 2_500_900;

  private static final double LATENT_FALL = 2444;

  /** σ, W/(m²·K⁴), CODATA 2018. */
  private static final double STEFAN_BOLTZMANN = 5.670374419e-8;

  /** γ of Alexander's method, 1 − 1/√2. */
  private static final double GAMMA = 1 - Math.sqrt(0.5);

  /**
   * Heat capacity of a cubic metre of air at 100 °C times the Lewis number to 2/3: turns a heat
   * transfer coefficient into one of mass (Chilton and Colburn; from memory of Incropera and
   * others, table A.4).
   */
  private static final double LEWIS = 955 * 0.90;

  /** Molar mass of water over the gas constant, kg·K/J. */
  private static final double WATER_GAS = 0.018015 / 8.314462618;

  /** The outermost cell is so much thinner than the innermost. */
  private static final double FINEST = 0.2;

  private static final double FIRST_STEP = 1e-3;
  private static final double LEAST_STEP = 1e-9;
  private static final double DRIES = 0.5;
  private static final double GROWTH = 1.25;
  private static final int NEWTON_ROUNDS = 30;
  private static final double NEWTON_KELVIN = 1e-7;
  private static final double KELVIN = 273.15;

  /** The front is taken to stand at least this share of a cell below its outer face. */
  private static final double LEAST_DRY = 0.02;

  /** Below this share of its first water the surface gives less vapour: a modelling choice. */
  private static final double DRY_SKIN = 0.2;

  /**
   * What the body is made of.
   *
   * @param density kg/m³ at the start
   * @param water what can evaporate, kg for each kg at the start, 0 to below 1
   * @param dryHeat specific heat of the rest, J for each kg at the start and K
   * @param wetConductivity W/(m·K) with all its water
   * @param dryConductivity W/(m·K) without
   * @param boiling °C at which the water boils
   */
  public record Material(
      double density,
      double water,
      double dryHeat,
      double wetConductivity,
      double dryConductivity,
      double boiling)
      implements Serializable {
    /**
     * Checks the figures.
     *
     * @param density kg/m³ at the start
     * @param water what can evaporate, kg for each kg at the start, 0 to below 1
     * @param dryHeat specific heat of the rest, J for each kg at the start and K
     * @param wetConductivity W/(m·K) with all its water
     * @param dryConductivity W/(m·K) without
     * @param boiling °C at which the water boils
     */
    public Material {
      boolean fits =
          density > 0
              && water >= 0
              && water < 1
              && dryHeat > 0
              && wetConductivity > 0
              && dryConductivity > 0
              && boiling > 0
              && boiling < 200;
      if (!fits || Double.isInfinite(density + dryHeat + wetConductivity + dryConductivity)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a body can't be made of this",
            density
                + " kg/m³, water "
                + water
                + ", "
                + dryHeat
                + " J/(kg·K), "
                + wetConductivity
                + " and "
                + dryConductivity
                + " W/(m·K), boiling at "
                + boiling
                + " °C",
            "give positive figures, water from 0 to below 1");
      }
    }

    double heat(double waterLeft) {
      return dryHeat + waterLeft * WATER_HEAT;
    }
  }

  /** What the surface meets. */
  public interface Surroundings {
    /**
     * The temperature of the air and of the walls.
     *
     * @param seconds since the start
     * @return °C
     */
    double celsius(double seconds);

    /**
     * The coefficient of convection.
     *
     * @param seconds since the start
     * @return W/(m²·K)
     */
    double convection(double seconds);

    /**
     * The emissivity between walls and body; 0 for no radiation.
     *
     * @return 0 to 1
     */
    double emissivity();

    /**
     * The pressure of water vapour in the air.
     *
     * @param seconds since the start
     * @return Pa; negative for a surface that neither gives nor takes water
     */
    double vapour(double seconds);

    /**
     * How much longer the body is than at the start in each of its directions.
     *
     * @param seconds since the start
     * @param mean its mean temperature in °C
     * @return a factor, at least 1
     */
    default double growth(double seconds, double mean) {
      return 1;
    }
  }

  /** Watches a run; it sees the state at the start and after each step. */
  @FunctionalInterface
  public interface Watch {
    /**
     * Looks at the state.
     *
     * @param state the state; it changes while the run goes on
     * @return false to stop
     */
    boolean goOn(Run state);
  }

  /**
   * Checks the figures.
   *
   * @param dimensions 1 for a slab, 2 for a long cylinder, 3 for a sphere
   * @param half from the middle to the surface, m
   * @param material what it is made of
   * @param cells how many cells, at least 8
   * @param steps how many full steps for the whole time, at least 20
   */
  public DryingBody {
    requireNonNull(material, "material");
    boolean fits = dimensions >= 1 && dimensions <= 3 && half > 0 && cells >= 8 && steps >= 20;
    if (!fits || Double.isInfinite(half)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such body",
          dimensions + " dimensions, " + half + " m, " + cells + " cells, " + steps + " steps",
          "give 1 to 3 dimensions, a positive size, 8 cells or more and 20 steps or more");
    }
  }

  /** Heat of vaporisation at a temperature, J/kg; a straight line between steam-table values. */
  static double latent(double celsius) {
    return LATENT_ZERO - LATENT_FALL * celsius;
  }

  /**
   * Runs.
   *
   * @param celsius the temperature at the start, below the boiling point
   * @param seconds the longest time, positive
   * @param surroundings what the surface meets
   * @param watch looks at each state
   * @return the last state
   * @throws BakeryException if it starts hotter than it boils, or there is no time
   */
  public Run run(double celsius, double seconds, Surroundings surroundings, Watch watch) {
    if (!(celsius <= material.boiling) || !(seconds > 0) || Double.isInfinite(seconds)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the body can't start so",
          celsius + " °C for " + seconds + " s",
          "give at most the boiling point, " + material.boiling + " °C, and a positive time");
    }
    Run run = new Run(celsius, surroundings);
    boolean on = watch.goOn(run);
    double longest = seconds / steps;
    double step = Math.min(FIRST_STEP, longest);
    while (on && run.seconds < seconds * (1 - 1e-12)) {
      double wanted = Math.min(step, seconds - run.seconds);
      while (!run.advance(wanted)) {
        wanted /= 2;
        step = wanted;
        if (wanted < LEAST_STEP) {
          throw new BakeryException(
              Reason.OUT_OF_RANGE,
              "the heat in the body can't be followed",
              "stuck after " + run.seconds + " s",
              "give milder surroundings or more cells");
        }
      }
      step = Math.min(longest, step * GROWTH);
      on = watch.goOn(run);
    }
    return run;
  }

  /** The body at one time. It changes while a run goes on. */
  public final class Run {
    private final Surroundings surroundings;
    private final double[] radius;
    private final double[] mass;
    private final double[] width;
    private final double[] faceArea;
    private final double[] temperature;
    private final double[] water;
    private final double[] held;
    private final double[] conductance;
    private final double[] first;
    private final double[] second;
    private final double[] local;
    private final double[] slope;
    private final double[] upper;
    private final double[] right;
    private final double[] flux;
    private final double[] inverse;
    private final double[] atBoiling;
    private final double[] toBoil;
    private final double[] scale;
    private final double[] rate;
    private final double startHeat;
    private final double total;
    private double growth = 1;
    private double seconds;
    private double surface;
    private double heatIn;
    private double heatMoved;
    private double heatOut;
    private double lost;
    private double condensed;

    /** Of the last stage that was solved: W/m² and kg/(m²·s) and J/kg leaving with it. */
    private double inflow;

    private double drying;

    Run(double celsius, Surroundings surroundings) {
      this.surroundings = requireNonNull(surroundings, "surroundings");
      int n = cells;
      radius = new double[n];
      mass = new double[n];
      width = new double[n];
      faceArea = new double[n];
      temperature = new double[n];
      water = new double[n];
      held = new double[n];
      conductance = new double[n];
      first = new double[n];
      second = new double[n];
      local = new double[n];
      slope = new double[n];
      upper = new double[n];
      right = new double[n];
      flux = new double[n];
      inverse = new double[n];
      atBoiling = new double[n];
      toBoil = new double[n];
      scale = new double[n];
      rate = new double[n];
      double stretch = Math.pow(FINEST, 1.0 / (n - 1));
      double unit = half * (1 - stretch) / (1 - Math.pow(stretch, n));
      double inner = 0;
      for (int i = 0; i < n; i++) {
        width[i] = unit * Math.pow(stretch, i);
        double outer = i == n - 1 ? half : inner + width[i];
        radius[i] = (inner + outer) / 2;
        width[i] = outer - inner;
        mass[i] =
            material.density
                * (Math.pow(outer, dimensions) - Math.pow(inner, dimensions))
                / dimensions;
        faceArea[i] = Math.pow(outer, dimensions - 1.0);
        temperature[i] = celsius;
        water[i] = material.water;
        inner = outer;
      }
      total = Arrays.stream(mass).sum();
      surface = celsius;
      startHeat = heat();
    }

    private double heat() {
      double sum = 0;
      for (int i = 0; i < cells; i++) {
        sum += mass[i] * material.heat(water[i]) * temperature[i];
      }
      return sum;
    }

    /** How much of a cell is dry, 0 to 1. */
    private double dry(int i) {
      return material.water == 0 ? 0 : 1 - Math.min(1, water[i] / material.water);
    }

    /** Whether the boiling front stands in a cell. */
    private boolean boils(int i) {
      return temperature[i] == material.boiling && water[i] > 0 && material.water > 0;
    }

    /** m²·K/W from where a cell has its temperature to its outer face. */
    private double outward(int i) {
      double dry = dry(i);
      // a boiling cell has its temperature at the front: dry outside of it, wet inside
      return boils(i)
          ? Math.max(LEAST_DRY, dry) * width[i] / material.dryConductivity
          : width[i] / (2 * conductivity(dry));
    }

    /** m²·K/W from the inner face of a cell to where it has its temperature. */
    private double inward(int i) {
      double dry = dry(i);
      return boils(i)
          ? (1 - dry) * width[i] / material.wetConductivity
          : width[i] / (2 * conductivity(dry));
    }

    private double conductivity(double dry) {
      return material.wetConductivity + dry * (material.dryConductivity - material.wetConductivity);
    }

    /** One step; false if Newton's method did not settle and nothing was changed. */
    private boolean advance(double dt) {
      int n = cells;
      growth = surroundings.growth(seconds, mean());
      double stretch = Math.pow(growth, dimensions - 2.0);
      for (int i = 0; i < n; i++) {
        double resistance = outward(i) + (i + 1 < n ? inward(i + 1) : 0);
        conductance[i] = stretch * faceArea[i] / resistance;
        held[i] = material.heat(water[i]) * temperature[i];
      }
      double area = faceArea[n - 1] * Math.pow(growth, dimensions - 1.0);
      // in one step at most half of the outermost water dries off; the other half may boil
      mostDrying = DRIES * water[n - 1] * mass[n - 1] / (area * dt);
      if (!stage(held, first, GAMMA * dt, seconds + GAMMA * dt, area)) {
        return false;
      }
      double firstInflow = inflow;
      double firstDrying = drying;
      double firstLatent = drying * latentUsed;
      for (int i = 0; i < n; i++) {
        flux[i] = held[i] + (1 - GAMMA) / GAMMA * (first[i] - held[i]);
      }
      if (!stage(flux, second, GAMMA * dt, seconds + dt, area)) {
        return false;
      }
      double by = area * dt;
      double vapour = by * ((1 - GAMMA) * firstDrying + GAMMA * drying);
      double latentHeat = by * ((1 - GAMMA) * firstLatent + GAMMA * drying * latentUsed);
      double gained = by * ((1 - GAMMA) * firstInflow + GAMMA * inflow);
      heatIn += gained;
      heatMoved += Math.abs(gained);
      // the water that dried off leaves with its own heat, then what is left may boil
      double skin = Math.min(material.boiling, second[n - 1] * inverse[n - 1]);
      second[n - 1] -= vapour * WATER_HEAT * skin / mass[n - 1];
      water[n - 1] -= vapour / mass[n - 1];
      lost += vapour;
      condensed += Math.max(0, -vapour);
      heatOut += latentHeat + vapour * WATER_HEAT * skin;
      for (int i = 0; i < n; i++) {
        settle(i, second[i]);
      }
      seconds += dt;
      return true;
    }

    /** kg/(m²·s) that may dry off in this step. */
    private double mostDrying;

    /** J/kg that the last stage took for its drying. */
    private double latentUsed;

    /** The temperature and what boiled off, from the heat held. */
    private void settle(int i, double heat) {
      double c = material.heat(water[i]);
      double boiling = material.boiling;
      double above = heat - c * boiling;
      if (above <= 0) {
        temperature[i] = heat / c;
        return;
      }
      double latent = latent(boiling);
      double vapour = Math.min(water[i], above / latent);
      temperature[i] =
          vapour < water[i] ? boiling : boiling + (above - water[i] * latent) / material.dryHeat;
      water[i] = vapour < water[i] ? water[i] - vapour : 0;
      lost += vapour * mass[i];
      heatOut += vapour * mass[i] * (latent + WATER_HEAT * boiling);
    }

    /** Solves H = known + dt·F(H). */
    private boolean stage(double[] known, double[] heat, double dt, double at, double area) {
      int n = cells;
      double dryHeat = material.dryHeat;
      boolean dries = surroundings.vapour(at) >= 0;
      for (int i = 0; i < n; i++) {
        double c = material.heat(water[i]);
        inverse[i] = 1 / c;
        atBoiling[i] = c * material.boiling;
        toBoil[i] = water[i] * latent(material.boiling);
        scale[i] = dt / mass[i];
        // the rate of the stage before is a good guess
        heat[i] = known[i] + dt * rate[i];
      }
      toBoil[n - 1] *= dries ? 1 - DRIES : 1;
      double air = surroundings.celsius(at);
      double h = surroundings.convection(at);
      double emissivity = surroundings.emissivity();
      double vapour = surroundings.vapour(at);
      double boiling = material.boiling;
      double inverseDry = 1 / dryHeat;
      double skin = 1 / (outward(n - 1) * growth);
      double moist =
          material.water == 0 ? 0 : Math.min(1, water[n - 1] / (DRY_SKIN * material.water));
      for (int round = 0; round < NEWTON_ROUNDS; round++) {
        for (int i = 0; i < n; i++) {
          double above = heat[i] - atBoiling[i];
          if (above <= 0) {
            local[i] = heat[i] * inverse[i];
            slope[i] = inverse[i];
          } else if (above <= toBoil[i]) {
            local[i] = boiling;
            slope[i] = 0;
          } else {
            local[i] = boiling + (above - toBoil[i]) * inverseDry;
            slope[i] = inverseDry;
          }
        }
        double outerSlope = surfaceFlux(air, h, emissivity, skin, local[n - 1]);
        double dryingSlope = surfaceDrying(h, vapour, moist, Math.min(local[n - 1], boiling));
        double latent = latent(Math.min(local[n - 1], boiling));
        double worst = 0;
        for (int i = 0; i < n; i++) {
          double out =
              i + 1 < n
                  ? conductance[i] * (local[i] - local[i + 1])
                  : -area * (inflow - drying * latent);
          double in = i > 0 ? conductance[i - 1] * (local[i - 1] - local[i]) : 0;
          double by = scale[i];
          double residual = heat[i] - known[i] - by * (in - out);
          double outward =
              i + 1 < n
                  ? conductance[i]
                  : -area * (outerSlope - (local[n - 1] < boiling ? dryingSlope * latent : 0));
          double inward = i > 0 ? conductance[i - 1] : 0;
          double diagonal = 1 + by * (inward + outward) * slope[i];
          double lower = i > 0 ? -by * inward * slope[i - 1] : 0;
          double pivot = 1 / (diagonal - (i > 0 ? lower * upper[i - 1] : 0));
          upper[i] = i + 1 < n ? -by * conductance[i] * slope[i + 1] * pivot : 0;
          right[i] = (-residual - (i > 0 ? lower * right[i - 1] : 0)) * pivot;
        }
        for (int i = n - 1; i >= 0; i--) {
          right[i] -= i + 1 < n ? upper[i] * right[i + 1] : 0;
          heat[i] += right[i];
          worst = Math.max(worst, Math.abs(right[i]));
        }
        if (worst < NEWTON_KELVIN * dryHeat) {
          for (int i = 0; i < n; i++) {
            rate[i] = (heat[i] - known[i]) / dt;
          }
          latentUsed = latent;
          return true;
        }
      }
      return false;
    }

    /** Sets the flux into the surface; returns its slope by the temperature of the last cell. */
    private double surfaceFlux(
        double air, double h, double emissivity, double skin, double inside) {
      double hot = air + KELVIN;
      double guess = surface;
      double radiation = 0;
      for (int k = 0; k < 20; k++) {
        double here = guess + KELVIN;
        double radiated =
            emissivity * STEFAN_BOLTZMANN * (hot * hot * hot * hot - here * here * here * here);
        radiation = 4 * emissivity * STEFAN_BOLTZMANN * here * here * here;
        double miss = h * (air - guess) + radiated - skin * (guess - inside);
        double step = miss / (h + radiation + skin);
        guess += step;
        if (Math.abs(step) < 1e-10) {
          break;
        }
      }
      surface = guess;
      inflow = skin * (guess - inside);
      return skin * (skin / (skin + h + radiation) - 1);
    }

    /** Sets the water that the surface gives; returns its slope by the temperature. */
    private double surfaceDrying(double h, double vapour, double moist, double inside) {
      if (vapour < 0 || material.water == 0) {
        drying = 0;
        return 0;
      }
      double kelvin = Math.max(KELVIN, inside + KELVIN);
      double saturated = IapwsIf97Saturation.pressureAt(kelvin);
      double next = IapwsIf97Saturation.pressureAt(kelvin + 0.01);
      double transfer = h / LEWIS * WATER_GAS / kelvin;
      double given = transfer * (saturated - vapour);
      // a dry skin gives little, but takes what condenses
      double share = given > 0 ? moist : 1;
      drying = Math.min(mostDrying, share * given);
      return drying < mostDrying ? share * transfer * (next - saturated) / 0.01 : 0;
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
     * The temperature in the middle, from a parabola through the two innermost cells.
     *
     * @return °C
     */
    public double core() {
      double near = radius[0] * radius[0];
      double far = radius[1] * radius[1];
      double found = temperature[0] + (temperature[0] - temperature[1]) * near / (far - near);
      // wet crumb never passes the boiling point
      return water[0] > 0 ? Math.min(found, material.boiling) : found;
    }

    /**
     * The temperature of the surface.
     *
     * @return °C
     */
    public double surface() {
      return surface;
    }

    /**
     * The mean temperature by mass.
     *
     * @return °C
     */
    public double mean() {
      double sum = 0;
      for (int i = 0; i < cells; i++) {
        sum += mass[i] * temperature[i];
      }
      return sum / total;
    }

    /**
     * How much of its mass the body has lost.
     *
     * @return a share of the first mass; negative where more condensed than evaporated
     */
    public double loss() {
      return lost / total;
    }

    /**
     * How much has condensed on the surface.
     *
     * @return a share of the first mass
     */
    public double condensed() {
      return condensed / total;
    }

    /**
     * How deep the dry crust is: the thickness of what has lost its water, cells in between by
     * their share.
     *
     * @return metres, without growth
     */
    public double crust() {
      double depth = 0;
      for (int i = cells - 1; i >= 0 && material.water > 0; i--) {
        double dry = 1 - Math.min(1, water[i] / material.water);
        depth += dry * width[i];
        if (dry < 0.5) {
          break;
        }
      }
      return depth;
    }

    /**
     * The heat that went in through the surface for each kilogram at the start.
     *
     * @return J/kg
     */
    public double heatTaken() {
      return heatIn / total;
    }

    /**
     * How far the heat balance is from closing: heat in less heat held less heat that left with
     * vapour, over all heat that went in or out through the surface.
     *
     * @return 0 but for rounding
     */
    public double heatBalance() {
      return heatMoved == 0 ? 0 : (heatIn - heatOut - (heat() - startHeat)) / heatMoved;
    }

    /**
     * How far the mass balance is from closing: water at the start less water left less water lost,
     * over the water at the start.
     *
     * @return 0 but for rounding
     */
    public double massBalance() {
      double left = 0;
      for (int i = 0; i < cells; i++) {
        left += mass[i] * water[i];
      }
      double began = total * material.water;
      return began == 0 ? 0 : (began - left - lost) / began;
    }
  }
}

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
 * <p>A body of any shape is taken by its half thickness and its surface: dimensions = half ·
 * surface / volume, which is 1, 2 and 3 for slab, cylinder and sphere. A share of its surface may
 * be covered (a tray, a stone, the walls of a tin): there heat comes in another way and no vapour
 * leaves. Open and covered sectors meet in the middle.
 *
 * @param dimensions 1 for a slab, 2 for a long cylinder, 3 for a sphere, between for others
 * @param half from the middle to the surface, m
 * @param material what it is made of
 * @param cells how many cells, at least 8
 * @param steps how many full steps for the whole time, at least 20; the first are much smaller
 * @param covered the share of the surface that gives no vapour, 0 to below 1
 */
public record DryingBody(
    double dimensions, double half, Material material, int cells, int steps, double covered)
    implements Serializable {
  /** Specific heat of water in the body, J/(kg·K): common handbook value (from memory). */
  public static final double WATER_HEAT = 4200;

  /** Heat of vaporisation at 0 °C and its fall to 100 °C, J/kg and J/(kg·K): steam tables. */
  private static final double LATENT_ZERO = 2_500_900;

  private static final double LATENT_FALL = 2444;

  /** Specific heat of steam, J/(kg·K): steam tables, 100 to 200 °C at the pressure of the air. */
  private static final double VAPOUR_HEAT = 2000;

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
  static final double WATER_GAS = 0.018015 / 8.314462618;

  /** The outermost cell is so much thinner than the innermost. */
  private static final double FINEST = 0.2;

  private static final double FIRST_STEP = 1e-3;
  private static final double LEAST_STEP = 1e-9;
  private static final double DRIES = 0.5;
  private static final double GROWTH = 1.25;
  private static final int NEWTON_ROUNDS = 30;
  private static final double NEWTON_KELVIN = 1e-6;
  private static final double KELVIN = 273.15;

  /** The front is taken to stand at least this share of a cell below its outer face. */
  private static final double LEAST_DRY = 0.02;

  /** Below this share of its first water the next cell gives vapour too: a modelling choice. */
  private static final double HANDS_OVER = 0.3;

  /** Below this share of its first water a cell is crust, and what is left boils off. */
  private static final double TRACE = 0.01;

  /** The vapour at the front and in the oven stays below this share of the pressure. */
  private static final double MOST_VAPOUR = 1 - 1e-4;

  private static final double MOST_AIR_VAPOUR = 0.95;

  /** So many of the cells lie towards the covered face, where there is one. */
  private static final double COVERED_CELLS = 0.4;

  /** The conductivity of a cell is kept for every kelvin from 0 °C to here. */
  private static final int TABLE_CELSIUS = 110;

  /** Diffusivity of dry crust, ln (m²/s) against the share of gas: J. Food Eng. 26 (1995) 497. */
  private static final double CRUST_SLOPE = 0.62;

  private static final double CRUST_LEVEL = -15.30;

  /**
   * What the body is made of.
   *
   * @param density kg/m³ at the start
   * @param water what can evaporate, kg for each kg at the start, 0 to below 1
   * @param dryHeat specific heat of the rest, J for each kg at the start and K
   * @param wetConductivity W/(m·K) with all its water; for a foam that of the dough without gas
   * @param dryConductivity W/(m·K) without; for a foam at the start
   * @param boiling °C at which the water boils
   * @param pores its gas cells, the pressure of the air, and how vapour passes its crust
   * @param foam whether conductivities follow temperature and growth
   */
  public record Material(
      double density,
      double water,
      double dryHeat,
      double wetConductivity,
      double dryConductivity,
      double boiling,
      Pores pores,
      boolean foam)
      implements Serializable {
    /**
     * A body whose conductivities do not change.
     *
     * @param density kg/m³ at the start
     * @param water what can evaporate, kg for each kg at the start, 0 to below 1
     * @param dryHeat specific heat of the rest, J for each kg at the start and K
     * @param wetConductivity W/(m·K) with all its water
     * @param dryConductivity W/(m·K) without
     * @param boiling °C at which the water boils
     */
    public Material(
        double density,
        double water,
        double dryHeat,
        double wetConductivity,
        double dryConductivity,
        double boiling) {
      this(
          density,
          water,
          dryHeat,
          wetConductivity,
          dryConductivity,
          boiling,
          new Pores(
              0,
              IapwsIf97Saturation.pressureAt(
                  KELVIN + (boiling > 0 && boiling < 200 ? boiling : 100)),
              1,
              Pores.USUAL_CRUST_DIFFUSION),
          false);
    }

    /**
     * A foam: gas cells in dough, with evaporation and condensation in them, that turns into dry
     * crust. Conductivity follows temperature and the share of gas; that of the crust is its
     * diffusivity, exp(0.62·ε − 15.30) m²/s (J. Food Eng. 26 (1995) 497–510), times its own density
     * and heat.
     *
     * @param density kg/m³ at the start, gas included
     * @param water what can evaporate, kg for each kg at the start, 0 to below 1
     * @param dryHeat specific heat of the rest, J for each kg at the start and K
     * @param solidConductivity of the dough without gas, W/(m·K)
     * @param boiling °C at which the water boils
     * @param pores its cells
     * @return the material
     */
    public static Material foam(
        double density,
        double water,
        double dryHeat,
        double solidConductivity,
        double boiling,
        Pores pores) {
      return new Material(
          density,
          water,
          dryHeat,
          solidConductivity,
          crust(pores.share(), density, dryHeat),
          boiling,
          pores,
          true);
    }

    private static double crust(double gas, double density, double dryHeat) {
      return StrictMath.exp(CRUST_SLOPE * gas + CRUST_LEVEL) * density * dryHeat;
    }

    /** Of the crust when the body has grown. */
    double dryAt(double volume) {
      return foam ? crust(pores.grown(volume), density / volume, dryHeat) : dryConductivity;
    }

    /**
     * Checks the figures.
     *
     * @param density kg/m³ at the start
     * @param water what can evaporate, kg for each kg at the start, 0 to below 1
     * @param dryHeat specific heat of the rest, J for each kg at the start and K
     * @param wetConductivity W/(m·K) with all its water
     * @param dryConductivity W/(m·K) without
     * @param boiling °C at which the water boils
     * @param pores its gas cells, the pressure of the air, and how vapour passes its crust
     * @param foam whether conductivities follow temperature and growth
     */
    public Material {
      requireNonNull(pores, "pores");
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

    /**
     * How much of the open face meets the oven; the rest is shaded by neighbours.
     *
     * @return above 0 to 1
     */
    default double openShare() {
      return 1;
    }

    /**
     * The coefficient of convection, or of a stone, at the covered face.
     *
     * @param seconds since the start
     * @return W/(m²·K)
     */
    default double coveredConvection(double seconds) {
      return convection(seconds);
    }

    /**
     * The emissivity between the walls and what covers the face.
     *
     * @return 0 to 1
     */
    default double coveredEmissivity() {
      return emissivity();
    }

    /**
     * The resistance between what covers the face and the body.
     *
     * @return m²·K/W
     */
    default double coveredContact() {
      return 0;
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
   * @param dimensions 1 for a slab, 2 for a long cylinder, 3 for a sphere, between for others
   * @param half from the middle to the surface, m
   * @param material what it is made of
   * @param cells how many cells, at least 8
   * @param steps how many full steps for the whole time, at least 20
   * @param covered the share of the surface that gives no vapour, 0 to below 1
   */
  public DryingBody {
    requireNonNull(material, "material");
    boolean fits =
        dimensions >= 1
            && dimensions <= 3
            && half > 0
            && cells >= 8
            && steps >= 20
            && covered >= 0
            && covered < 1;
    if (!fits || Double.isInfinite(half)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "no such body",
          dimensions
              + " dimensions, "
              + half
              + " m, "
              + cells
              + " cells, "
              + steps
              + " steps, covered "
              + covered,
          "give 1 to 3 dimensions, a positive size, 8 cells or more and 20 steps or more");
    }
  }

  /**
   * A body that is open on all sides.
   *
   * @param dimensions 1 for a slab, 2 for a long cylinder, 3 for a sphere, between for others
   * @param half from the middle to the surface, m
   * @param material what it is made of
   * @param cells how many cells, at least 8
   * @param steps how many full steps for the whole time, at least 20
   */
  public DryingBody(double dimensions, double half, Material material, int cells, int steps) {
    this(dimensions, half, material, cells, steps, 0);
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

    /** The cell in the middle: those before it lie towards the covered face. */
    private final int middle;

    private final double[] radius;
    private final double[] mass;
    private final double[] width;
    private final double[] faceArea;
    private final double[] temperature;
    private final double[] water;
    private final double[] held;
    private final double[] conductance;
    private final double[] wet;
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
    private final double[] table;
    private final double startHeat;
    private final double total;
    private double growth = 1;
    private double dryConductivity;
    private double seconds;
    private double surface;
    private double underside;
    private double heatIn;
    private double heatMoved;
    private double heatOut;
    private double lost;
    private double condensed;

    /** Of the last stage that was solved: W into the open and the covered face. */
    private double inflow;

    private double below;

    /** Of the two cells that give vapour: which, their area, resistance s/m, share; kg/s; J/kg. */
    private int front;

    /** Vapour that the last step gave for each square metre of the open face, kg/(m²·s). */
    private double wind;

    private final double[] giveArea = new double[2];
    private final double[] giveCrust = new double[2];
    private final double[] giveShare = new double[2];
    private final double[] giveMost = new double[2];
    private final double[] given = new double[2];
    private final double[] givenSlope = new double[2];
    private final double[] givenLatent = new double[2];
    private final double[] firstGiven = new double[2];
    private final double[] firstLatent = new double[2];

    Run(double celsius, Surroundings surroundings) {
      this.surroundings = requireNonNull(surroundings, "surroundings");
      int n = cells;
      middle = covered > 0 ? (int) Math.round(COVERED_CELLS * n) : 0;
      radius = new double[n];
      mass = new double[n];
      width = new double[n];
      faceArea = new double[n];
      temperature = new double[n];
      water = new double[n];
      held = new double[n];
      conductance = new double[n];
      wet = new double[n];
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
      table = new double[TABLE_CELSIUS + 2];
      for (int i = 0; material.foam && i < table.length; i++) {
        table[i] = material.pores.cell(Math.min(Math.max(i, 0.1), material.boiling));
      }
      double inner = layOut(0, middle, n, 1, 1 - covered);
      if (middle > 0) {
        // both sides share the cell in the middle
        mass[middle] /= 1 - covered;
        layOutCovered(inner);
      }
      Arrays.fill(temperature, celsius);
      Arrays.fill(water, material.water);
      total = Arrays.stream(mass).sum();
      surface = celsius;
      underside = celsius;
      startHeat = heat();
    }

    /** Cells from the middle outward; returns the outer radius of the first. */
    private double layOut(double from, int begin, int end, int way, double share) {
      int n = Math.abs(end - begin);
      double stretch = StrictMath.pow(FINEST, 1.0 / (n - 1));
      double unit = (half - from) * (1 - stretch) / (1 - StrictMath.pow(stretch, n));
      double inner = from;
      double firstOuter = 0;
      for (int k = 0; k < n; k++) {
        int i = begin + way * k;
        double outer = k == n - 1 ? half : inner + unit * StrictMath.pow(stretch, k);
        radius[i] = (inner + outer) / 2;
        width[i] = outer - inner;
        mass[i] =
            share
                * material.density
                * (StrictMath.pow(outer, dimensions) - StrictMath.pow(inner, dimensions))
                / dimensions;
        faceArea[i] = share * StrictMath.pow(outer, dimensions - 1);
        inner = outer;
        firstOuter = k == 0 ? outer : firstOuter;
      }
      return firstOuter;
    }

    private void layOutCovered(double from) {
      layOut(from, middle - 1, -1, -1, covered);
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

    /** Whether the front stands in a cell. */
    private boolean boils(int i) {
      return i == front || temperature[i] == material.boiling && water[i] > 0 && material.water > 0;
    }

    /** m²·K/W from where a cell has its temperature to its outer face. */
    private double outward(int i) {
      double dry = dry(i);
      // a boiling cell has its temperature at the front: dry outside of it, wet inside
      return boils(i)
          ? Math.max(LEAST_DRY, dry) * width[i] / dryConductivity
          : width[i] / (halves(i) * conductivity(i, dry));
    }

    /** The cell in the middle of two sides reaches as far to the other side. */
    private double halves(int i) {
      return i == middle && middle > 0 ? Math.min(2, dimensions) : 2;
    }

    /** m²·K/W from the inner face of a cell to where it has its temperature. */
    private double inward(int i) {
      double dry = dry(i);
      return boils(i) ? (1 - dry) * width[i] / wet[i] : width[i] / (2 * conductivity(i, dry));
    }

    private double conductivity(int i, double dry) {
      return wet[i] + dry * (dryConductivity - wet[i]);
    }

    private void setConductivities() {
      double volume = StrictMath.pow(growth, dimensions);
      dryConductivity = material.dryAt(volume);
      double gas = material.pores.grown(volume);
      for (int i = 0; i < cells; i++) {
        if (material.foam) {
          double at = Math.max(0, Math.min(TABLE_CELSIUS, temperature[i]));
          int k = (int) at;
          double cell = table[k] + (at - k) * (table[k + 1] - table[k]);
          wet[i] = Pores.mixed(material.wetConductivity, cell, gas);
        } else {
          wet[i] = material.wetConductivity;
        }
      }
    }

    /** Finds the outermost cell that still gives vapour and how hard its way out is. */
    private void findFront(double at) {
      front = -1;
      if (material.water == 0 || surroundings.vapour(at) < 0) {
        return;
      }
      double crust = 0;
      int f = cells - 1;
      while (f > middle && water[f] < TRACE * material.water) {
        crust += width[f];
        f--;
      }
      if (water[f] < TRACE * material.water) {
        return;
      }
      front = f;
      double stretch = StrictMath.pow(growth, dimensions - 1);
      double share = f == middle ? 1 : Math.min(1, water[f] / (HANDS_OVER * material.water));
      giveShare[0] = share;
      giveShare[1] = 1 - share;
      giveArea[0] = stretch * faceArea[f];
      giveCrust[0] = growth * (crust + dry(f) * width[f]) / material.pores.crustDiffusion();
      if (f > middle) {
        giveArea[1] = stretch * faceArea[f - 1];
        giveCrust[1] = growth * (crust + width[f]) / material.pores.crustDiffusion();
      } else {
        giveShare[1] = 0;
      }
    }

    /** One step; false if Newton's method did not settle and nothing was changed. */
    private boolean advance(double dt) {
      int n = cells;
      double before = lost;
      growth = surroundings.growth(seconds, mean());
      setConductivities();
      findFront(seconds);
      double stretch = StrictMath.pow(growth, dimensions - 2);
      for (int i = 0; i < n; i++) {
        held[i] = material.heat(water[i]) * temperature[i];
        if (i < middle) {
          double between =
              i + 1 == middle ? covered / (1 - covered) * faceArea[middle] : faceArea[i + 1];
          conductance[i] = stretch * between / resistance(i + 1, i);
        } else if (i + 1 < n) {
          conductance[i] = stretch * faceArea[i] / resistance(i, i + 1);
        }
      }
      double spread = StrictMath.pow(growth, dimensions - 1);
      // in one step at most half of the water of a cell dries off; the other half may boil
      for (int k = 0; k < 2 && front - k >= 0; k++) {
        giveMost[k] = DRIES * water[front - k] * mass[front - k] / dt;
      }
      if (!stage(held, first, GAMMA * dt, seconds + GAMMA * dt, spread)) {
        return false;
      }
      double firstInflow = inflow + below;
      for (int k = 0; k < 2; k++) {
        firstGiven[k] = given[k];
        firstLatent[k] = given[k] * givenLatent[k];
      }
      for (int i = 0; i < n; i++) {
        flux[i] = held[i] + (1 - GAMMA) / GAMMA * (first[i] - held[i]);
      }
      if (!stage(flux, second, GAMMA * dt, seconds + dt, spread)) {
        return false;
      }
      double gained = dt * ((1 - GAMMA) * firstInflow + GAMMA * (inflow + below));
      heatIn += gained;
      heatMoved += Math.abs(gained);
      // the water that dried off leaves with its own heat, then what is left may boil
      for (int k = 0; k < 2 && front - k >= 0; k++) {
        int e = front - k;
        double vapour = dt * ((1 - GAMMA) * firstGiven[k] + GAMMA * given[k]);
        double latentHeat = dt * ((1 - GAMMA) * firstLatent[k] + GAMMA * given[k] * givenLatent[k]);
        double skin = Math.min(material.boiling, second[e] * inverse[e]);
        second[e] -= vapour * WATER_HEAT * skin / mass[e];
        water[e] -= vapour / mass[e];
        lost += vapour;
        condensed += Math.max(0, -vapour);
        heatOut += latentHeat + vapour * WATER_HEAT * skin;
      }
      for (int i = 0; i < n; i++) {
        settle(i, second[i]);
      }
      wind = Math.max(0, (lost - before) / (dt * spread * faceArea[n - 1]));
      seconds += dt;
      return true;
    }

    /** From the inner cell's temperature to the outer one's. */
    private double resistance(int inside, int outside) {
      return outward(inside) + inward(outside);
    }

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
    private boolean stage(double[] known, double[] heat, double dt, double at, double spread) {
      int n = cells;
      double dryHeat = material.dryHeat;
      double boiling = material.boiling;
      for (int i = 0; i < n; i++) {
        double c = material.heat(water[i]);
        inverse[i] = 1 / c;
        atBoiling[i] = c * boiling;
        toBoil[i] = water[i] * latent(boiling);
        scale[i] = dt / mass[i];
        // the rate of the stage before is a good guess
        heat[i] = known[i] + dt * rate[i];
      }
      int gives = 0;
      for (int k = 0; k < 2 && front - k >= 0; k++) {
        given[k] = 0;
        givenSlope[k] = 0;
        if (giveShare[k] > 0) {
          toBoil[front - k] *= 1 - DRIES;
          gives = k + 1;
        }
      }
      double air = surroundings.celsius(at);
      double open = surroundings.openShare();
      double h = open * surroundings.convection(at);
      double emissivity = open * surroundings.emissivity();
      double vapour =
          Math.min(MOST_AIR_VAPOUR * material.pores.pressure(), surroundings.vapour(at));
      double inverseDry = 1 / dryHeat;
      double skin = 1 / (outward(n - 1) * growth);
      double area = spread * faceArea[n - 1];
      // what leaves warms up in the crust and pushes the hot air back
      double steam = wind * VAPOUR_HEAT;
      double film = steam < 1e-9 * h ? h : steam / StrictMath.expm1(steam / h);
      double coveredArea = middle > 0 ? spread * faceArea[0] : 0;
      double coveredSkin =
          middle > 0 ? 1 / (outward(0) * growth + surroundings.coveredContact()) : 0;
      double coveredH = middle > 0 ? surroundings.coveredConvection(at) : 0;
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
        surface = face(air, film, emissivity, skin, local[n - 1], surface, steam);
        inflow = area * skin * (surface - local[n - 1]);
        double inflowSlope = area * faceSlope;
        double belowSlope = 0;
        if (middle > 0) {
          underside =
              face(
                  air,
                  coveredH,
                  surroundings.coveredEmissivity(),
                  coveredSkin,
                  local[0],
                  underside,
                  0);
          below = coveredArea * coveredSkin * (underside - local[0]);
          belowSlope = coveredArea * faceSlope;
        }
        for (int k = 0; k < gives; k++) {
          give(k, h, open, vapour, Math.min(local[front - k], boiling));
        }
        double worst = 0;
        for (int i = 0; i < n; i++) {
          double out = i + 1 < n ? conductance[i] * (local[i] - local[i + 1]) : -inflow;
          double in = i > 0 ? conductance[i - 1] * (local[i - 1] - local[i]) : below;
          double by = scale[i];
          double leaving = i + 1 < n ? conductance[i] : -inflowSlope;
          double coming = i > 0 ? conductance[i - 1] : -belowSlope;
          if (front - i >= 0 && front - i < gives) {
            int k = front - i;
            out += given[k] * givenLatent[k];
            leaving += local[i] < boiling ? givenSlope[k] * givenLatent[k] : 0;
          }
          double residual = heat[i] - known[i] - by * (in - out);
          double diagonal = 1 + by * (coming + leaving) * slope[i];
          double lower = i > 0 ? -by * conductance[i - 1] * slope[i - 1] : 0;
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
          return true;
        }
      }
      return false;
    }

    /** By the last call of face: the slope of the flux, W/(m²·K), by the temperature inside. */
    private double faceSlope;

    /** The temperature of a face between the oven and a cell. */
    private double face(
        double air,
        double h,
        double emissivity,
        double skin,
        double inside,
        double from,
        double steam) {
      double hot = air + KELVIN;
      double guess = from;
      double all = 1;
      for (int k = 0; k < 20; k++) {
        double here = guess + KELVIN;
        double radiated =
            emissivity * STEFAN_BOLTZMANN * (hot * hot * hot * hot - here * here * here * here);
        double radiation = 4 * emissivity * STEFAN_BOLTZMANN * here * here * here;
        double warming = guess > material.boiling ? steam : 0;
        double miss =
            h * (air - guess)
                + radiated
                - skin * (guess - inside)
                - warming * (guess - material.boiling);
        all = h + radiation + skin + warming;
        double step = miss / all;
        guess += step;
        if (Math.abs(step) < 1e-10) {
          break;
        }
      }
      faceSlope = skin * (skin / all - 1);
      return guess;
    }

    /**
     * The vapour that a cell gives: diffusion through a film and the crust with the flow that it
     * makes itself (J. Stefan), so that it has no bound where the vapour nears the pressure of the
     * air. In thin air it diffuses faster, by the inverse of the pressure.
     */
    private void give(int k, double h, double open, double vapour, double inside) {
      double kelvin = Math.max(KELVIN, inside + KELVIN);
      double pressure = material.pores.pressure();
      double activity = material.foam ? material.pores.waterActivity() : 1;
      double most = MOST_VAPOUR * pressure;
      double now = activity * IapwsIf97Saturation.pressureAt(kelvin);
      double next = activity * IapwsIf97Saturation.pressureAt(kelvin + 0.01);
      // a crust that is damp takes what condenses as if it were not there
      double thin = pressure / Atmosphere.SEA_LEVEL_PASCAL;
      double crust = now < vapour ? 0 : thin * giveCrust[k] / open;
      double carries =
          giveShare[k] * giveArea[k] * pressure * WATER_GAS / kelvin / (thin * LEWIS / h + crust);
      given[k] = carries * StrictMath.log((pressure - vapour) / (pressure - Math.min(most, now)));
      givenSlope[k] = carries * (next - now) / 0.01 / (pressure - Math.min(most, now));
      givenLatent[k] = latent(inside);
      if (given[k] > giveMost[k]) {
        given[k] = giveMost[k];
        givenSlope[k] = 0;
      }
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
      if (middle > 0) {
        return temperature[middle];
      }
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
     * The temperature of the covered face, in the body's own skin's surroundings: of the tin or the
     * stone where it touches.
     *
     * @return °C; that of the surface if nothing is covered
     */
    public double underside() {
      return middle > 0 ? underside : surface;
    }

    /**
     * The temperature of the coldest place.
     *
     * @return °C
     */
    public double coldest() {
      double least = core();
      for (int i = 0; i < cells; i++) {
        least = Math.min(least, temperature[i]);
      }
      return least;
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
      for (int i = cells - 1; i >= middle && material.water > 0; i--) {
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

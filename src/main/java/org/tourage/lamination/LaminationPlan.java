package org.tourage.lamination;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.CELSIUS;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;
import static org.tourage.quantity.BakeryUnits.METRE;
import static org.tourage.quantity.BakeryUnits.MILLIMETRE;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.Advice;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.advice.Explained;
import org.tourage.advice.WorkedLine;
import org.tourage.advice.Working;
import org.tourage.formula.Batch;
import org.tourage.formula.Formula;
import org.tourage.formula.StageKind;
import org.tourage.internal.Numbers;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Density;
import org.tourage.quantity.Extent;

/**
 * The geometry of laminating by conservation of volume: fat block, dough sheet, every rolling and
 * every fold, and the final sheet, with the thickness of the layers. Before a fold the sheet is
 * rolled along its length only; after each fold it is turned by 90°, so that its width becomes the
 * length of the next rolling. The final sheet is rolled to the width that is wanted. Fat and dough
 * are taken to thin alike.
 *
 * <p>Immutable and serialisable.
 *
 * @param sequence lock-in and folds
 * @param dough the mass of the dough
 * @param fat the mass of the fat
 * @param doughDensity the density of the dough
 * @param fatDensity the density of the fat
 * @param setup the widths and thicknesses that the baker chooses
 */
public record LaminationPlan(
    FoldSequence sequence,
    Amount<Mass> dough,
    Amount<Mass> fat,
    Amount<Density> doughDensity,
    Amount<Density> fatDensity,
    Setup setup)
    implements Explained, Serializable {

  private static final String ROLL_OUT = "roll out";

  /** Dough and fat are taken to have this temperature while they are rolled. */
  private static final Amount<Temperature> LAMINATING = CELSIUS.amount(15);

  private static final double YEASTED_FAT_LOW = 20;
  private static final double YEASTED_FAT_HIGH = 35;
  private static final int YEASTED_LAYERS_LOW = 12;
  private static final int YEASTED_LAYERS_HIGH = 50;
  private static final int PUFF_LAYERS_HIGH = 730;

  /** Metres: 200 fat layers in 1.0 mm, the thin end of a published design space. */
  private static final double THINNEST_PITCH = 1.0e-3 / 200;

  /**
   * What the baker chooses.
   *
   * @param packetWidth the width of the closed packet
   * @param blockThickness the thickness of the fat block
   * @param margin the bare edge of dough around the block
   * @param foldThickness the thickness to which the sheet is rolled before each fold
   * @param finalThickness the thickness of the final sheet
   * @param finalWidth the width of the final sheet
   */
  public record Setup(
      Amount<Length> packetWidth,
      Amount<Length> blockThickness,
      Amount<Length> margin,
      Amount<Length> foldThickness,
      Amount<Length> finalThickness,
      Amount<Length> finalWidth)
      implements Serializable {

    /**
     * A bench of a small kitchen: packet 200 mm wide, block 10 mm, margin 10 mm, fold at 8 mm,
     * final sheet 4 mm and 250 mm wide (common practice).
     */
    public static final Setup SMALL_BENCH =
        new Setup(
            MILLIMETRE.amount(200),
            MILLIMETRE.amount(10),
            MILLIMETRE.amount(10),
            MILLIMETRE.amount(8),
            MILLIMETRE.amount(4),
            MILLIMETRE.amount(250));

    /**
     * Checks that lengths are positive and the block fits the packet.
     *
     * @param packetWidth the width of the closed packet
     * @param blockThickness the thickness of the fat block
     * @param margin the bare edge of dough around the block
     * @param foldThickness the thickness to which the sheet is rolled before each fold
     * @param finalThickness the thickness of the final sheet
     * @param finalWidth the width of the final sheet
     */
    public Setup {
      checkPositive("packet width", packetWidth);
      checkPositive("thickness of the block", blockThickness);
      checkPositive("thickness for folding", foldThickness);
      checkPositive("final thickness", finalThickness);
      checkPositive("final width", finalWidth);
      if (margin.value() < 0 || 2 * margin.in(METRE) >= packetWidth.in(METRE)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "the margin leaves no room for fat",
            margin + " on both sides of a packet " + packetWidth + " wide",
            "give a margin from 0 mm to less than half the packet");
      }
    }

    private static void checkPositive(String name, Amount<Length> length) {
      if (length.value() <= 0) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "the " + name + " must be positive",
            length.toString(),
            "give it in mm or in");
      }
    }

    /**
     * The same with another final sheet.
     *
     * @param thickness its thickness
     * @param width its width
     * @return the setup
     */
    public Setup withFinalSheet(Quantity<Length> thickness, Quantity<Length> width) {
      return new Setup(
          packetWidth,
          blockThickness,
          margin,
          foldThickness,
          Amount.from(thickness),
          Amount.from(width));
    }

    /**
     * The same with another packet.
     *
     * @param width the width of the closed packet
     * @return the setup
     */
    public Setup withPacketWidth(Quantity<Length> width) {
      return new Setup(
          Amount.from(width), blockThickness, margin, foldThickness, finalThickness, finalWidth);
    }
  }

  /**
   * A step and what it leaves on the bench.
   *
   * @param action what is done
   * @param extent length and width afterwards
   * @param thickness thickness afterwards
   * @param fatLayers distinct fat layers afterwards
   * @param fatLayer thickness of a fat layer inside the stack
   * @param doughLayer thickness of a dough layer inside the stack, two faces fused where faces
   *     touched
   */
  public record Step(
      String action,
      Extent extent,
      Amount<Length> thickness,
      BigInteger fatLayers,
      Amount<Length> fatLayer,
      Amount<Length> doughLayer)
      implements Serializable {
    /** {@code letter fold: 200 mm x 190 mm, 24 mm thick}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.metric();
      return action
          + ": "
          + format.length(extent.length())
          + " x "
          + format.length(extent.width())
          + ", "
          + format.length(thickness)
          + " thick, "
          + fatLayers
          + " fat layers of "
          + format.length(fatLayer);
    }
  }

  /**
   * Checks the masses and densities.
   *
   * @param sequence lock-in and folds
   * @param dough the mass of the dough
   * @param fat the mass of the fat
   * @param doughDensity the density of the dough
   * @param fatDensity the density of the fat
   * @param setup the widths and thicknesses that the baker chooses
   */
  public LaminationPlan {
    requireNonNull(sequence, "sequence");
    requireNonNull(setup, "setup");
    if (dough.value() <= 0 || fat.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "laminating needs dough and fat",
          dough + " of dough, " + fat + " of fat",
          "give positive masses");
    }
    if (doughDensity.value() <= 0 || fatDensity.value() <= 0) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "a density must be positive",
          doughDensity + " and " + fatDensity,
          "dough has about 1200 kg/m³, fat about 920 kg/m³");
    }
  }

  /**
   * A plan.
   *
   * @param sequence lock-in and folds
   * @param dough the mass of the dough
   * @param fat the mass of the fat
   * @param doughDensity the density of the dough
   * @param fatDensity the density of the fat
   * @param setup the widths and thicknesses that the baker chooses
   * @return the plan
   */
  public static LaminationPlan of(
      FoldSequence sequence,
      Quantity<Mass> dough,
      Quantity<Mass> fat,
      Quantity<Density> doughDensity,
      Quantity<Density> fatDensity,
      Setup setup) {
    return new LaminationPlan(
        sequence,
        Amount.from(dough),
        Amount.from(fat),
        Amount.from(doughDensity),
        Amount.from(fatDensity),
        setup);
  }

  /**
   * A plan for a batch: its dough, its roll-in, and their densities by what they are made of.
   *
   * @param batch the batch; its formula has a roll-in stage
   * @param sequence lock-in and folds
   * @param setup the widths and thicknesses that the baker chooses
   * @return the plan
   * @throws BakeryException if the formula has no roll-in
   */
  public static LaminationPlan of(Batch batch, FoldSequence sequence, Setup setup) {
    return of(batch, PERCENT.amount(0), sequence, setup);
  }

  /**
   * A plan for a batch of which some dough stays behind in bowl and on bench.
   *
   * @param batch the batch; its formula has a roll-in stage
   * @param processLoss the share of the dough that is lost before the fat is locked in, 0 % to below
   *     100 %
   * @param sequence lock-in and folds
   * @param setup the widths and thicknesses that the baker chooses
   * @return the plan
   * @throws BakeryException if the formula has no roll-in, or the loss leaves no dough
   */
  public static LaminationPlan of(
      Batch batch, Quantity<Dimensionless> processLoss, FoldSequence sequence, Setup setup) {
    double loss = FRACTION.measure(processLoss);
    if (!(loss >= 0 && loss < 1)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the process loss leaves no dough",
          Amount.from(processLoss).toString(),
          "give 0 % to less than 100 %");
    }
    Formula formula = batch.formula();
    if (formula.stages().stream().noneMatch(s -> s.kind() == StageKind.ROLL_IN)) {
      throw new BakeryException(
          Reason.MISSING,
          "there is no fat to be rolled in",
          formula.name(),
          "give the formula a roll-in stage");
    }
    return of(
        sequence,
        batch.baseDough().multiply(1 - loss),
        batch.rollIn(),
        ChoiOkos1986.density(formula.constituents(StageKind::inDough), LAMINATING),
        ChoiOkos1986.density(formula.constituents(k -> k == StageKind.ROLL_IN), LAMINATING),
        setup);
  }

  /**
   * The mass of the sheet.
   *
   * @return dough and fat together
   */
  public Amount<Mass> mass() {
    return dough.add(fat);
  }

  private double doughVolume() {
    return dough.in(KILOGRAM) / doughDensity.in(KILOGRAM_PER_CUBIC_METRE);
  }

  private double fatVolume() {
    return fat.in(KILOGRAM) / fatDensity.in(KILOGRAM_PER_CUBIC_METRE);
  }

  private double volume() {
    return doughVolume() + fatVolume();
  }

  /**
   * The share of fat in the volume.
   *
   * @return φ
   */
  public Amount<Dimensionless> fatByVolume() {
    return PERCENT.amount(100 * fatVolume() / volume());
  }

  /**
   * The fat by the dough that it is rolled into.
   *
   * @return the percentage by mass
   */
  public Amount<Dimensionless> fatByDough() {
    return PERCENT.amount(100 * fat.in(GRAM) / dough.in(GRAM));
  }

  /** The inner part of the packet: the fat block, or the dough in the inverted way. */
  private double coreVolume() {
    return sequence.lockIn().fatOutside() ? doughVolume() : fatVolume();
  }

  /** Bands of what is enclosed. */
  private int coreBands() {
    LockIn lockIn = sequence.lockIn();
    return lockIn.fatOutside() ? lockIn.doughBands() : lockIn.fatBands();
  }

  /** Bands of what encloses; two for a diamond whose corners meet. */
  private int coverBands() {
    LockIn lockIn = sequence.lockIn();
    return lockIn.fatOutside() ? lockIn.fatBands() : lockIn.doughBands();
  }

  /**
   * The block that is enclosed: of fat, or of dough in the inverted way. Its width is the width of
   * the packet without the margins.
   *
   * @return length and width
   */
  public Extent block() {
    double width = setup.packetWidth().in(METRE) - 2 * setup.margin().in(METRE);
    double length = coreVolume() / (width * setup.blockThickness().in(METRE));
    return extent(length, width);
  }

  /** The closed packet. */
  private Extent packet() {
    double block = block().length().in(METRE);
    double margin = setup.margin().in(METRE);
    double length = block / coreBands() + 2 * margin;
    return extent(length, setup.packetWidth().in(METRE));
  }

  /**
   * The sheet that encloses the block: of dough, or of fat in the inverted way. For the envelope
   * these are its two diagonals.
   *
   * @return length and width
   */
  public Extent sheet() {
    Extent packet = packet();
    double length = packet.length().in(METRE);
    double width = packet.width().in(METRE);
    return sequence.lockIn().diamond()
        ? extent(2 * length, 2 * width)
        : extent(coverBands() * length, width);
  }

  /**
   * The thickness of that sheet.
   *
   * @return the thickness
   */
  public Amount<Length> sheetThickness() {
    Extent packet = packet();
    double area = packet.length().in(METRE) * packet.width().in(METRE);
    return millimetres((volume() - coreVolume()) / (coverBands() * area));
  }

  /**
   * Every step from the closed packet to the final sheet.
   *
   * @return the steps in order
   * @throws BakeryException if the setup would roll a sheet thicker than it lies
   */
  public List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    FoldSequence soFar = FoldSequence.lockIn(sequence.lockIn());
    Extent packet = packet();
    double length = packet.length().in(METRE);
    double width = packet.width().in(METRE);
    steps.add(step("close the packet", soFar, length, width));
    for (Fold fold : sequence.folds()) {
      length = volume() / (width * setup.foldThickness().in(METRE));
      addRolled(steps, step(ROLL_OUT, soFar, length, width));
      soFar = soFar.fold(fold);
      length /= fold.panels();
      steps.add(step(fold.name(), soFar, length, width));
      // the turn by 90°
      double turned = width;
      width = length;
      length = turned;
    }
    Extent last = finalSheet();
    addRolled(
        steps,
        step("roll to the final sheet", soFar, last.length().in(METRE), last.width().in(METRE)));
    return steps;
  }

  private static void addRolled(List<Step> steps, Step rolled) {
    Step before = steps.get(steps.size() - 1);
    if (rolled.thickness().compareTo(before.thickness()) > 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "rolling can't make a sheet thicker",
          before.thickness() + " after \"" + before.action() + "\", wanted " + rolled.thickness(),
          "choose a thinner sheet, or a smaller packet");
    }
    steps.add(rolled);
  }

  /**
   * The passes of every rolling: before each fold at most halving, after the last fold gentler.
   *
   * @return one schedule for each rolling, in order; one without passes where the thickness stays
   * @throws BakeryException if the setup would roll a sheet thicker than it lies
   */
  public List<RollingSchedule> rolling() {
    List<RollingSchedule> schedules = new ArrayList<>();
    List<Step> steps = steps();
    Amount<Length> thickness = steps.get(0).thickness();
    Amount<Length> length = steps.get(0).extent().length();
    for (int i = 1; i < steps.size(); i++) {
      Step step = steps.get(i);
      boolean last = i == steps.size() - 1;
      boolean rolled = last || step.action().equals(ROLL_OUT);
      if (rolled) {
        double limit = last ? RollingSchedule.GENTLE_LIMIT : RollingSchedule.USUAL_LIMIT;
        schedules.add(RollingSchedule.of(thickness, step.thickness(), limit, length));
      }
      thickness = step.thickness();
      // a fold is followed by the turn, so the width is rolled next
      length = rolled ? step.extent().length() : step.extent().width();
    }
    return schedules;
  }

  /**
   * True strain by direction.
   *
   * @param first along the first rolling and every second one after it
   * @param across across it, which is rolled after each turn by 90°
   */
  public record Strain(double first, double across) implements Serializable {}

  /**
   * How the dough was stretched in each direction: the sum of ln(thickness before / after) of the
   * rollings that went that way. Folding does not stretch. The last rolling counts for its length
   * alone, though it may widen or narrow the sheet to its final width.
   *
   * @return the strain
   */
  public Strain strain() {
    double[] sums = new double[2];
    List<RollingSchedule> schedules = rolling();
    // every fold but the last rolling is followed by a turn
    for (int i = 0; i < schedules.size(); i++) {
      sums[i % 2] += schedules.get(i).strain();
    }
    return new Strain(sums[0], sums[1]);
  }

  /**
   * What does not fit a bench or a sheeter.
   *
   * @param bench the length of the bench, or of the belt, and the width that can be rolled
   * @return advice, one for each step that is too long or too wide
   */
  public List<Advice> fitting(Extent bench) {
    List<Advice> advice = new ArrayList<>();
    AmountFormat format = AmountFormat.sideBySide();
    for (Step step : steps()) {
      boolean tooLong = step.extent().length().compareTo(bench.length()) > 0;
      boolean tooWide = step.extent().width().compareTo(bench.width()) > 0;
      if (tooLong || tooWide) {
        Amount<Length> side = tooLong ? step.extent().length() : step.extent().width();
        Amount<Length> room = tooLong ? bench.length() : bench.width();
        advice.add(
            Advice.warning(
                tooLong ? "SHEET_TOO_LONG" : "SHEET_TOO_WIDE",
                step.action()
                    + " leaves a sheet "
                    + format.length(side)
                    + (tooLong ? " long" : " wide")
                    + " on "
                    + format.length(room),
                "Work it in two halves, or roll it less thin before the fold",
                "geometry"));
      }
    }
    return advice;
  }

  /**
   * The roll-in fat for a share of the dough.
   *
   * @param share fat by dough
   * @param dough the mass of the dough before any fat is rolled in
   * @return the mass of the fat
   */
  public static Amount<Mass> fatOfDough(Quantity<Dimensionless> share, Quantity<Mass> dough) {
    return Amount.from(dough).multiply(Amount.from(share).in(FRACTION));
  }

  /**
   * The roll-in fat for a share of the flour, as puff dough is often given.
   *
   * @param share fat by flour
   * @param flour the mass of the flour
   * @return the mass of the fat
   */
  public static Amount<Mass> fatOfFlour(Quantity<Dimensionless> share, Quantity<Mass> flour) {
    return Amount.from(flour).multiply(Amount.from(share).in(FRACTION));
  }

  /**
   * How much thinner the sheet would be than the closed packet if it had never been folded.
   *
   * @return the product of all reductions by rolling
   */
  public double totalReduction() {
    double product = 1;
    for (RollingSchedule schedule : rolling()) {
      product *= schedule.reduction();
    }
    return product;
  }

  /**
   * The final sheet.
   *
   * @return length and width
   */
  public Extent finalSheet() {
    double width = setup.finalWidth().in(METRE);
    return extent(volume() / (width * setup.finalThickness().in(METRE)), width);
  }

  private Step step(String action, FoldSequence soFar, double length, double width) {
    double thickness = volume() / (length * width);
    double fatShare = fatVolume() / volume();
    double multiplier = soFar.multiplier().doubleValue();
    boolean folded = !soFar.folds().isEmpty();
    LockIn lockIn = soFar.lockIn();
    double fatBand = thickness * fatShare / (lockIn.fatBands() * multiplier);
    double doughBand = thickness * (1 - fatShare) / (lockIn.doughBands() * multiplier);
    double fatLayer = fatBand;
    double doughLayer = doughBand;
    if (!lockIn.hasLikeFaces()) {
      // layers of one kind differ here: the mean
      fatLayer = thickness * fatShare / soFar.fatLayers().doubleValue();
      doughLayer = thickness * (1 - fatShare) / soFar.doughLayers().doubleValue();
    } else if (folded && lockIn.fatOutside()) {
      // the outer kind meets its own kind in a fold and becomes one layer of twice the thickness
      fatLayer = 2 * fatBand;
    } else if (folded) {
      doughLayer = 2 * doughBand;
    }
    return new Step(
        action,
        extent(length, width),
        millimetres(thickness),
        soFar.fatLayers(),
        millimetres(fatLayer),
        millimetres(doughLayer));
  }

  private static Extent extent(double lengthMetres, double widthMetres) {
    return new Extent(millimetres(lengthMetres), millimetres(widthMetres));
  }

  private static Amount<Length> millimetres(double metres) {
    return METRE.amount(metres).to(MILLIMETRE);
  }

  @Override
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    double fatPercent = fatByDough().value();
    if (fatPercent < YEASTED_FAT_LOW || fatPercent > YEASTED_FAT_HIGH) {
      advice.add(
          Advice.note(
              "ROLL_IN_UNUSUAL",
              "the roll-in is " + AmountFormat.metric().percent(fatByDough()) + " of the dough",
              "Yeasted laminated dough usually has 20 % to 35 %; puff dough has more",
              Advice.COMMON_PRACTICE));
    }
    BigInteger layers = sequence.fatLayers();
    if (layers.compareTo(BigInteger.valueOf(PUFF_LAYERS_HIGH)) > 0) {
      advice.add(
          Advice.warning(
              "FAT_LAYERS_MANY",
              layers + " fat layers are more than the dough keeps apart",
              "Leave out a fold; lift falls beyond about 730 fat layers",
              "S.P. Cauvain and L.S. Young, Baked Products, 2006 (from memory)"));
    } else if (layers.compareTo(BigInteger.valueOf(YEASTED_LAYERS_HIGH)) > 0
        || layers.compareTo(BigInteger.valueOf(YEASTED_LAYERS_LOW)) < 0) {
      advice.add(
          Advice.note(
              "FAT_LAYERS_UNUSUAL",
              layers + " fat layers",
              "Yeasted laminated dough usually has 12 to 50; puff dough 100 to 730",
              "S.P. Cauvain and L.S. Young, Baked Products, 2006 (from memory)"));
    }
    double pitch = setup.finalThickness().in(METRE) / layers.doubleValue();
    if (pitch < THINNEST_PITCH) {
      advice.add(
          Advice.warning(
              "FAT_LAYER_THIN",
              "fat and dough layer together are "
                  + AmountFormat.metric().length(METRE.amount(pitch))
                  + " thick",
              "Leave out a fold or leave the sheet thicker; 5 µm (200 fat layers in 1.0 mm) is the thinnest studied",
              "S. Silow, E. Zannini, C. Axel, M.C.E. Belz and E.K. Arendt, Foods 2017: range of a study of puff dough"));
    }
    return advice;
  }

  @Override
  public Working working() {
    List<WorkedLine> lines = new ArrayList<>(sequence.working().lines());
    lines.add(
        new WorkedLine(
            "V",
            "m_dough/ρ_dough + m_fat/ρ_fat",
            dough
                + " / "
                + doughDensity
                + " + "
                + fat
                + " / "
                + fatDensity
                + " = "
                + Numbers.significant(volume() * 1e6, 4)
                + " cm³",
            "conservation of volume"));
    Step last = steps().get(steps().size() - 1);
    AmountFormat format = AmountFormat.metric();
    lines.add(
        new WorkedLine(
            "fat layer",
            "t · φ / fat layers",
            format.length(last.thickness())
                + " × "
                + format.percent(fatByVolume())
                + " / "
                + last.fatLayers()
                + " = "
                + format.length(last.fatLayer()),
            "conservation of volume"));
    return new Working(lines);
  }

  /** The block, the sheet and the steps. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder(sequence.toString());
    for (Step step : steps()) {
      out.append('\n').append(step);
    }
    return out.toString();
  }
}

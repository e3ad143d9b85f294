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
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
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
import org.tourage.quantity.Given;

/**
 * The geometry of laminating by conservation of volume: fat block, dough sheet, every rolling and
 * every fold, and the final sheet, with the thickness of the layers. Before a fold the sheet is
 * rolled along its length only; after each fold it is turned by 90°, so that its width becomes the
 * length of the next rolling. The final sheet is rolled to the width that is wanted. Fat and dough
 * are taken to thin alike.
 *
 * <p>Start with {@link #of(Batch, FoldSequence, Setup)}. Immutable and serialisable.
 *
 * <pre>{@code
 * LaminationPlan.of(batch, FoldSequence.lockIn(LockIn.HALF).fold(Fold.BOOK).fold(Fold.LETTER),
 *     LaminationPlan.Setup.SMALL_BENCH).finalSheet();
 * }</pre>
 */
public final class LaminationPlan implements Explained, Serializable {
  private static final long serialVersionUID = 1L;

  /** Dough and fat are taken to have this temperature while they are rolled. */
  private static final Amount<Temperature> LAMINATING = CELSIUS.amount(15);

  /** Layers of a plan with more folds could no longer be told from nothing. */
  private static final int MOST_FOLDS = 50;

  /** Lock-in and folds. */
  private final FoldSequence sequence;

  /** The mass of the dough. */
  private final Amount<Mass> dough;

  /** The mass of the roll-in. */
  private final Amount<Mass> fat;

  /** The density of the dough. */
  private final Amount<Density> doughDensity;

  /** The density of the roll-in. */
  private final Amount<Density> fatDensity;

  /** What the baker chooses. */
  private final Setup setup;

  /** What kind of dough it is. */
  private final LaminatedDough kind;

  /** Block, cover and packet. */
  private final PacketGeometry packet;

  /** From the closed packet to the final sheet. */
  private final List<LaminationStep> steps;

  /**
   * What the baker chooses.
   *
   * @param packetWidth the width of the closed packet; an envelope is a square whose side follows
   *     from its block instead
   * @param fatThickness the thickness to which the fat is shaped: the block, or in the inverted way
   *     the sheet of fat around the dough
   * @param margin the bare edge around the block
   * @param foldThickness the thickness to which the sheet is rolled before each fold
   * @param finalThickness the thickness of the final sheet
   * @param finalWidth the width of the final sheet
   * @param rollers what it is rolled with
   */
  public record Setup(
      Amount<Length> packetWidth,
      Amount<Length> fatThickness,
      Amount<Length> margin,
      Amount<Length> foldThickness,
      Amount<Length> finalThickness,
      Amount<Length> finalWidth,
      Rollers rollers)
      implements Serializable {

    /**
     * A bench of a small kitchen with a pin: packet 200 mm wide, block 10 mm, margin 10 mm, fold at
     * 8 mm, final sheet 4 mm and 250 mm wide (common practice).
     */
    public static final Setup SMALL_BENCH =
        new Setup(
            MILLIMETRE.amount(200),
            MILLIMETRE.amount(10),
            MILLIMETRE.amount(10),
            MILLIMETRE.amount(8),
            MILLIMETRE.amount(4),
            MILLIMETRE.amount(250),
            Rollers.PIN);

    /**
     * A small shop with a sheeter for pastry: packet 350 mm wide, block 12 mm, margin 10 mm, fold
     * at 11 mm, final sheet 3.5 mm and 450 mm wide (common practice).
     */
    public static final Setup SHOP =
        new Setup(
            MILLIMETRE.amount(350),
            MILLIMETRE.amount(12),
            MILLIMETRE.amount(10),
            MILLIMETRE.amount(11),
            MILLIMETRE.amount(3.5),
            MILLIMETRE.amount(450),
            Rollers.PASTRY_SHEETER);

    /** The usual sheet of fat around the dough: common practice. */
    private static final Amount<Length> INVERTED = MILLIMETRE.amount(6);

    /**
     * Checks that lengths are positive and the block fits the packet.
     *
     * @param packetWidth the width of the closed packet
     * @param fatThickness the thickness to which the fat is shaped
     * @param margin the bare edge around the block
     * @param foldThickness the thickness to which the sheet is rolled before each fold
     * @param finalThickness the thickness of the final sheet
     * @param finalWidth the width of the final sheet
     * @param rollers what it is rolled with
     */
    public Setup {
      requireNonNull(packetWidth, "packetWidth");
      requireNonNull(fatThickness, "fatThickness");
      requireNonNull(margin, "margin");
      requireNonNull(foldThickness, "foldThickness");
      requireNonNull(finalThickness, "finalThickness");
      requireNonNull(finalWidth, "finalWidth");
      checkPositive("packet width", packetWidth);
      checkPositive("thickness of the fat", fatThickness);
      checkPositive("thickness for folding", foldThickness);
      checkPositive("final thickness", finalThickness);
      checkPositive("final width", finalWidth);
      requireNonNull(rollers, "rollers");
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
     * The setup for a lock-in: the same, but in the inverted way the fat is rolled to 6 mm, a sheet
     * around the dough (common practice).
     *
     * @param lockIn how the fat is enclosed
     * @return the setup
     */
    public Setup suiting(LockIn lockIn) {
      requireNonNull(lockIn, "lockIn");
      return lockIn.fatOutside() ? withFatThickness(INVERTED) : this;
    }

    /**
     * The same with another final sheet.
     *
     * @param thickness its thickness
     * @param width its width
     * @return the setup
     */
    public Setup withFinalSheet(Quantity<Length> thickness, Quantity<Length> width) {
      requireNonNull(thickness, "thickness");
      requireNonNull(width, "width");
      return new Setup(
          packetWidth,
          fatThickness,
          margin,
          foldThickness,
          Given.length("the thickness", thickness),
          Given.length("the width", width),
          rollers);
    }

    /**
     * The same with another packet.
     *
     * @param width the width of the closed packet
     * @return the setup
     */
    public Setup withPacketWidth(Quantity<Length> width) {
      requireNonNull(width, "width");
      return new Setup(
          Given.length("the width", width),
          fatThickness,
          margin,
          foldThickness,
          finalThickness,
          finalWidth,
          rollers);
    }

    /**
     * The same with the fat shaped thicker or thinner.
     *
     * @param thickness of the block, or in the inverted way of the sheet of fat around the dough;
     *     commonly 8 to 15 mm for a block
     * @return the setup
     */
    public Setup withFatThickness(Quantity<Length> thickness) {
      requireNonNull(thickness, "thickness");
      return new Setup(
          packetWidth,
          Given.length("the thickness", thickness),
          margin,
          foldThickness,
          finalThickness,
          finalWidth,
          rollers);
    }

    /**
     * The same with another bare edge around the block.
     *
     * @param edge the margin, 0 mm or more
     * @return the setup
     */
    public Setup withMargin(Quantity<Length> edge) {
      requireNonNull(edge, "edge");
      return new Setup(
          packetWidth,
          fatThickness,
          Given.length("the edge", edge),
          foldThickness,
          finalThickness,
          finalWidth,
          rollers);
    }

    /**
     * The same with another thickness before each fold.
     *
     * @param thickness commonly 10 to 15 mm in a small shop, 6 to 10 mm on a home bench
     * @return the setup
     */
    public Setup withFoldThickness(Quantity<Length> thickness) {
      requireNonNull(thickness, "thickness");
      return new Setup(
          packetWidth,
          fatThickness,
          margin,
          Given.length("the thickness", thickness),
          finalThickness,
          finalWidth,
          rollers);
    }

    /**
     * The same rolled with something else.
     *
     * @param other a sheeter or a pin
     * @return the setup
     */
    public Setup withRollers(Rollers other) {
      requireNonNull(other, "other");
      return new Setup(
          packetWidth, fatThickness, margin, foldThickness, finalThickness, finalWidth, other);
    }
  }

  private LaminationPlan(
      FoldSequence sequence,
      Amount<Mass> dough,
      Amount<Mass> fat,
      Amount<Density> doughDensity,
      Amount<Density> fatDensity,
      Setup setup,
      LaminatedDough kind) {
    this.sequence = requireNonNull(sequence, "sequence");
    this.setup = requireNonNull(setup, "setup");
    this.kind = requireNonNull(kind, "kind");
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
    if (sequence.folds().size() > MOST_FOLDS) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "nobody folds so often",
          sequence.folds().size() + " folds",
          "give up to " + MOST_FOLDS + "; FoldSequence.count() counts without a limit");
    }
    this.dough = dough;
    this.fat = fat;
    this.doughDensity = doughDensity;
    this.fatDensity = fatDensity;
    packet = PacketGeometry.of(sequence.lockIn(), setup, doughVolume(), fatVolume());
    steps = List.copyOf(new StepMaker(this).steps());
  }

  /**
   * A plan from masses and densities; of which kind the dough is, is not said.
   *
   * @param sequence lock-in and folds
   * @param dough the mass of the dough
   * @param fat the mass of the fat
   * @param doughDensity the density of the dough
   * @param fatDensity the density of the fat
   * @param setup the widths and thicknesses that the baker chooses
   * @return the plan
   * @throws BakeryException if a mass or a density is not positive, or a rolling would make a sheet
   *     thicker than it lies
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
        Given.mass("the dough", dough),
        Given.mass("the fat", fat),
        Given.density("the dough density", doughDensity),
        Given.density("the fat density", fatDensity),
        setup,
        LaminatedDough.UNSAID);
  }

  /**
   * A plan for a batch: its dough, its roll-in, and their densities by what they are made of.
   *
   * @param batch the batch; its formula has a roll-in stage
   * @param sequence lock-in and folds
   * @param setup the widths and thicknesses that the baker chooses
   * @return the plan
   * @throws BakeryException if the formula has no roll-in, or a rolling would make a sheet thicker
   *     than it lies
   */
  public static LaminationPlan of(Batch batch, FoldSequence sequence, Setup setup) {
    requireNonNull(batch, "batch");
    return of(batch, PERCENT.amount(0), sequence, setup);
  }

  /**
   * A plan for a batch of which some dough stays behind in bowl and on bench.
   *
   * @param batch the batch; its formula has a roll-in stage
   * @param processLoss the share of the dough that is lost before the fat is locked in, 0 % to
   *     below 100 %
   * @param sequence lock-in and folds
   * @param setup the widths and thicknesses that the baker chooses
   * @return the plan
   * @throws BakeryException if the formula has no roll-in, the loss leaves no dough, or a rolling
   *     would make a sheet thicker than it lies
   */
  public static LaminationPlan of(
      Batch batch, Quantity<Dimensionless> processLoss, FoldSequence sequence, Setup setup) {
    requireNonNull(batch, "batch");
    requireNonNull(processLoss, "processLoss");
    double loss = FRACTION.measure("the process loss", processLoss);
    if (!(loss >= 0 && loss < 1)) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the process loss leaves no dough",
          Given.ratio("the process loss", processLoss).toString(),
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
    return new LaminationPlan(
        sequence,
        batch.baseDough().multiply(1 - loss),
        batch.rollIn(),
        ChoiOkos1986.density(formula.constituents(StageKind::inDough), LAMINATING),
        ChoiOkos1986.density(formula.constituents(k -> k == StageKind.ROLL_IN), LAMINATING),
        setup,
        LaminatedDough.of(formula));
  }

  /**
   * The same for another kind of dough, which changes the advice alone.
   *
   * @param other what is baked
   * @return the plan
   */
  public LaminationPlan withKind(LaminatedDough other) {
    requireNonNull(other, "other");
    return new LaminationPlan(sequence, dough, fat, doughDensity, fatDensity, setup, other);
  }

  /**
   * Lock-in and folds.
   *
   * @return the sequence
   */
  public FoldSequence sequence() {
    return sequence;
  }

  /**
   * The mass of the dough.
   *
   * @return the mass, without the roll-in
   */
  public Amount<Mass> dough() {
    return dough;
  }

  /**
   * The mass of the roll-in: the fat and what is mixed into it.
   *
   * @return the mass
   */
  public Amount<Mass> fat() {
    return fat;
  }

  /**
   * The density of the dough.
   *
   * @return the density
   */
  public Amount<Density> doughDensity() {
    return doughDensity;
  }

  /**
   * The density of the roll-in.
   *
   * @return the density
   */
  public Amount<Density> fatDensity() {
    return fatDensity;
  }

  /**
   * What the baker chooses.
   *
   * @return the setup
   */
  public Setup setup() {
    return setup;
  }

  /**
   * What kind of dough it is.
   *
   * @return the kind; of a plan from a batch, by its formula
   */
  public LaminatedDough kind() {
    return kind;
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

  double fatVolume() {
    return fat.in(KILOGRAM) / fatDensity.in(KILOGRAM_PER_CUBIC_METRE);
  }

  double volume() {
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

  PacketGeometry packet() {
    return packet;
  }

  /**
   * The block that is enclosed: of fat, or of dough in the inverted way. Its width is the width of
   * the packet without the margins; the block of an envelope is a square.
   *
   * @return length and width
   */
  public Extent block() {
    return extent(packet.blockLength(), packet.blockWidth());
  }

  /**
   * The thickness of that block.
   *
   * @return the thickness; for a block of fat that of the setup
   */
  public Amount<Length> blockThickness() {
    return millimetres(packet.blockThickness());
  }

  /**
   * The sheet that encloses the block: of dough, or of fat in the inverted way. The sheet of an
   * envelope is a square, on which the block lies corner to side.
   *
   * @return length and width
   */
  public Extent sheet() {
    return extent(packet.coverLength(), packet.coverWidth());
  }

  /**
   * The thickness of that sheet.
   *
   * @return the thickness; for a sheet of fat that of the setup
   */
  public Amount<Length> sheetThickness() {
    return millimetres(packet.coverThickness());
  }

  /**
   * Every step from the closed packet to the final sheet.
   *
   * @return the steps in order
   */
  public List<LaminationStep> steps() {
    return steps;
  }

  /**
   * The passes of every rolling: before each fold at most halving, after the last fold gentler.
   *
   * @return one schedule for each rolling, in order; one without passes where the thickness stays
   */
  public List<RollingSchedule> rolling() {
    List<RollingSchedule> schedules = new ArrayList<>();
    for (LaminationStep step : steps) {
      if (step instanceof LaminationStep.Rolling rolled) {
        schedules.add(rolled.schedule());
      } else if (step instanceof LaminationStep.FinalRolling rolled) {
        schedules.add(rolled.schedule());
      }
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
   * What does not fit a bench.
   *
   * @param bench the length of the bench, or of the belt, and the width that can be rolled
   * @return advice, one for each step that is too long or too wide
   */
  public List<Advice> fitting(Extent bench) {
    requireNonNull(bench, "bench");
    return LaminationAdvice.fitting(steps, bench.length(), bench.width());
  }

  /**
   * The roll-in fat for a share of the dough.
   *
   * @param share fat by dough
   * @param dough the mass of the dough before any fat is rolled in
   * @return the mass of the fat
   */
  public static Amount<Mass> fatOfDough(Quantity<Dimensionless> share, Quantity<Mass> dough) {
    requireNonNull(share, "share");
    requireNonNull(dough, "dough");
    return Given.mass("the dough", dough).multiply(Given.ratio("the share", share).in(FRACTION));
  }

  /**
   * The roll-in fat for a share of the flour, as puff dough is often given.
   *
   * @param share fat by flour
   * @param flour the mass of the flour
   * @return the mass of the fat
   */
  public static Amount<Mass> fatOfFlour(Quantity<Dimensionless> share, Quantity<Mass> flour) {
    requireNonNull(share, "share");
    requireNonNull(flour, "flour");
    return Given.mass("the flour", flour).multiply(Given.ratio("the share", share).in(FRACTION));
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
    return steps.get(steps.size() - 1).extent();
  }

  static Extent extent(double lengthMetres, double widthMetres) {
    return new Extent(millimetres(lengthMetres), millimetres(widthMetres));
  }

  static Amount<Length> millimetres(double metres) {
    return METRE.amount(metres).to(MILLIMETRE);
  }

  @Override
  public List<Advice> advice() {
    return new LaminationAdvice(this).all();
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
    AmountFormat format = AmountFormat.metric();
    if (sequence.lockIn().diamond()) {
      lines.add(
          new WorkedLine(
              "side of the square",
              "√2 · side of the packet",
              "√2 × "
                  + format.length(steps.get(0).extent().width())
                  + " = "
                  + format.length(sheet().length()),
              "geometry"));
    }
    LaminationStep last = steps.get(steps.size() - 1);
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

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof LaminationPlan that
        && sequence.equals(that.sequence)
        && dough.equals(that.dough)
        && fat.equals(that.fat)
        && doughDensity.equals(that.doughDensity)
        && fatDensity.equals(that.fatDensity)
        && setup.equals(that.setup)
        && kind == that.kind;
  }

  @Override
  public int hashCode() {
    return Objects.hash(sequence, dough, fat, doughDensity, fatDensity, setup, kind.name());
  }

  /** The sequence and the steps. */
  @Override
  public String toString() {
    StringBuilder out = new StringBuilder(sequence.toString());
    for (LaminationStep step : steps) {
      out.append('\n').append(step);
    }
    return out.toString();
  }
}

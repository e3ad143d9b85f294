package org.tourage.lamination;

import static org.tourage.quantity.BakeryUnits.METRE;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Length;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.lamination.LaminationStep.Sheet;
import org.tourage.quantity.Amount;

/** Rolls and folds a closed packet; metres inside. */
final class StepMaker {
  private final LaminationPlan plan;
  private final double volume;
  private final double fatShare;

  StepMaker(LaminationPlan plan) {
    this.plan = plan;
    this.volume = plan.volume();
    this.fatShare = plan.fatVolume() / volume;
  }

  List<LaminationStep> steps() {
    List<LaminationStep> steps = new ArrayList<>();
    LaminationPlan.Setup setup = plan.setup();
    FoldSequence soFar = FoldSequence.lockIn(plan.sequence().lockIn());
    Sheet lying = sheet(soFar, plan.packet().length(), plan.packet().width());
    steps.add(new LaminationStep.Closing(soFar.lockIn(), lying));
    String before = "closing the packet";
    for (Fold fold : plan.sequence().folds()) {
      double width = lying.extent().width().in(METRE);
      double length = volume / (width * setup.foldThickness().in(METRE));
      Sheet rolled = sheet(soFar, length, width);
      checkThinner(lying, rolled, before);
      steps.add(new LaminationStep.Rolling(lying, rolled, schedule(lying, rolled)));
      soFar = soFar.fold(fold);
      Sheet folded = sheet(soFar, length / fold.panels(), width);
      steps.add(new LaminationStep.Folding(rolled, folded, fold));
      lying = folded.turned();
      before = "the " + fold.name();
    }
    double width = setup.finalWidth().in(METRE);
    Sheet last = sheet(soFar, volume / (width * setup.finalThickness().in(METRE)), width);
    checkThinner(lying, last, before);
    steps.add(new LaminationStep.FinalRolling(lying, last, schedule(lying, last).gentle()));
    return steps;
  }

  private RollingSchedule schedule(Sheet before, Sheet after) {
    Amount<Length> thin =
        after.thickness().compareTo(before.thickness()) > 0
            ? before.thickness()
            : after.thickness();
    return RollingSchedule.by(
        plan.setup().rollers(), before.thickness(), thin, before.extent().length());
  }

  private static void checkThinner(Sheet before, Sheet after, String what) {
    if (after.thickness().compareTo(before.thickness()) > 0) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "rolling can't make a sheet thicker",
          before.thickness() + " after " + what + ", wanted " + after.thickness(),
          "choose a thinner sheet, or a smaller packet");
    }
  }

  private Sheet sheet(FoldSequence soFar, double length, double width) {
    double thickness = volume / (length * width);
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
    return new Sheet(
        LaminationPlan.extent(length, width),
        LaminationPlan.millimetres(thickness),
        soFar.fatLayers(),
        LaminationPlan.millimetres(fatLayer),
        LaminationPlan.millimetres(doughLayer));
  }
}

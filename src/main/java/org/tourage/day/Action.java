package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.List;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.Lists;
import org.tourage.lamination.Fold;
import org.tourage.lamination.LockIn;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.Amount;

/** What is done in a step of a procedure. The words of the trade are the names. */
public sealed interface Action extends Serializable {
  /**
   * What the step is called when it has no name of its own.
   *
   * @return for example {@code retard}
   */
  String words();

  /**
   * Whether somebody's hands are busy all the time.
   *
   * @return whether it takes hands
   */
  default boolean takesHands() {
    return true;
  }

  /**
   * Mixes a stage into a dough or batter.
   *
   * @param stage the stage that is mixed, null for the final dough
   * @param target the wanted temperature of the mixed dough, null if nobody asks
   */
  record Mix(@Nullable String stage, @Nullable Amount<Temperature> target) implements Action {
    /**
     * Checks the temperature.
     *
     * @param stage the stage that is mixed, null for the final dough
     * @param target the wanted temperature of the mixed dough, 0 °C to 45 °C, null if nobody asks
     */
    public Mix {
      if (stage != null) {
        Names.check("a stage", "stage", stage);
      }
      if (target != null) {
        Ranges.within("a dough of this temperature", target, 0, 45);
      }
    }

    @Override
    public String words() {
      return stage == null ? "mix" : "mix " + stage;
    }
  }

  /**
   * Lets a preferment, soaker or levain ripen after it was stirred together.
   *
   * @param stage the stage
   */
  record Ripen(String stage) implements Action {
    /**
     * Checks that there is a stage.
     *
     * @param stage the stage
     */
    public Ripen {
      Names.check("a stage", "stage", stage);
    }

    @Override
    public String words() {
      return "ripen " + stage;
    }

    @Override
    public boolean takesHands() {
      return false;
    }
  }

  /** What needs no figures of its own. */
  enum Simple implements Action {
    /** A rest of the dough on the bench. */
    REST("rest", false),
    /** The rise of the whole dough. */
    BULK_RISE("bulk rise", false),
    /** Folding the dough over itself in its container. */
    FOLD_IN_BOWL("fold in the bowl", true),
    /** Chilling until the dough is firm. */
    CHILL("chill", false),
    /** A long rest in the cold. */
    RETARD("retard", false),
    /** Bringing a chilled dough to a temperature at which it can be worked. */
    TEMPER("temper", false),
    /** Shaping the fat to a block or sheet. */
    SHAPE_FAT("shape the fat", true),
    /** Rolling a sheet to its final thickness. */
    SHEET("roll the sheet", true),
    /** Cutting a sheet into pieces. */
    CUT("cut", true),
    /** Dividing a dough by weight. */
    DIVIDE("divide", true),
    /** Shaping pieces. */
    SHAPE("shape", true),
    /** The last rise. */
    PROOF("proof", false),
    /** Brushing, sprinkling or scoring before the oven. */
    GLAZE("glaze", true),
    /** Cooling after the oven. */
    COOL("cool", false),
    /** Anything else. */
    WORK("work", true);

    private final String words;
    private final boolean hands;

    Simple(String words, boolean hands) {
      this.words = words;
      this.hands = hands;
    }

    @Override
    public String words() {
      return words;
    }

    @Override
    public boolean takesHands() {
      return hands;
    }
  }

  /**
   * Encloses the fat.
   *
   * @param lockIn how
   */
  record Enclose(LockIn lockIn) implements Action {
    /**
     * Checks that there is one.
     *
     * @param lockIn how
     */
    public Enclose {
      requireNonNull(lockIn, "lockIn");
    }

    @Override
    public String words() {
      return "lock in the fat";
    }
  }

  /**
   * Rolls the packet out and folds it.
   *
   * @param folds the folds of this turn, one or more
   */
  record Turn(List<Fold> folds) implements Action {
    /**
     * Copies the folds.
     *
     * @param folds the folds of this turn, one or more
     */
    public Turn {
      folds = Lists.copy(folds, "folds");
      if (folds.isEmpty()) {
        throw new BakeryException(
            Reason.MISSING, "a turn needs a fold", "none", "give for example a letter fold");
      }
    }

    @Override
    public String words() {
      return "turn";
    }
  }

  /**
   * Boils pieces in water or lye water before the oven.
   *
   * @param water the temperature of the bath, null for boiling at the altitude of the kitchen
   */
  record Boil(@Nullable Amount<Temperature> water) implements Action {
    /**
     * Checks the temperature.
     *
     * @param water the temperature of the bath, 0 °C to 102 °C, null for boiling at the altitude of
     *     the kitchen
     */
    public Boil {
      if (water != null) {
        Ranges.within("a bath of this temperature", water, 0, 102);
      }
    }

    @Override
    public String words() {
      return "boil";
    }
  }

  /**
   * Bakes. This is the only place of its times and set points.
   *
   * @param profile the steps of the oven
   */
  record BakeOff(OvenProfile profile) implements Action {
    /**
     * Checks that there is a profile.
     *
     * @param profile the steps of the oven
     */
    public BakeOff {
      requireNonNull(profile, "profile");
    }

    @Override
    public String words() {
      return "bake";
    }

    @Override
    public boolean takesHands() {
      return false;
    }
  }
}

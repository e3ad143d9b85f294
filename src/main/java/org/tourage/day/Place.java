package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/** Where the dough stands during a step, and so how warm the air about it is. */
public sealed interface Place extends Serializable {
  /** The room of the kitchen. */
  Place ROOM = Named.ROOM;

  /** The refrigerator of the kitchen. */
  Place REFRIGERATOR = Named.REFRIGERATOR;

  /** The freezer of the kitchen. */
  Place FREEZER = Named.FREEZER;

  /** The proofing cabinet of the kitchen. */
  Place PROOFER = Named.PROOFER;

  /**
   * How warm the air is there.
   *
   * @param kitchen the kitchen
   * @return the temperature
   */
  Amount<Temperature> temperature(Kitchen kitchen);

  /**
   * Air of a stated temperature.
   *
   * @param air the temperature
   * @return the place
   */
  static Place air(Quantity<Temperature> air) {
    requireNonNull(air, "air");
    return new OwnAir(Given.temperature("the air", air));
  }

  /** A place of the kitchen. */
  enum Named implements Place {
    /** The room. */
    ROOM("room"),
    /** The refrigerator. */
    REFRIGERATOR("refrigerator"),
    /** The freezer. */
    FREEZER("freezer"),
    /** The proofing cabinet. */
    PROOFER("proofer");

    private final String word;

    Named(String word) {
      this.word = word;
    }

    /**
     * The place in one word.
     *
     * @return for example {@code refrigerator}
     */
    public String word() {
      return word;
    }

    @Override
    public Amount<Temperature> temperature(Kitchen kitchen) {
      requireNonNull(kitchen, "kitchen");
      return switch (this) {
        case ROOM -> kitchen.room();
        case REFRIGERATOR -> kitchen.refrigerator();
        case FREEZER -> kitchen.freezer();
        case PROOFER -> kitchen.proofer();
      };
    }

    @Override
    public String toString() {
      return word;
    }
  }

  /**
   * Air of a stated temperature.
   *
   * @param air the temperature
   */
  record OwnAir(Amount<Temperature> air) implements Place {
    /**
     * Checks that there is one.
     *
     * @param air the temperature
     */
    public OwnAir {
      requireNonNull(air, "air");
    }

    @Override
    public Amount<Temperature> temperature(Kitchen kitchen) {
      requireNonNull(kitchen, "kitchen");
      return air;
    }

    @Override
    public String toString() {
      return "air of " + AmountFormat.sideBySide().temperature(air);
    }
  }
}

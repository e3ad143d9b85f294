package org.tourage.day;

import static java.util.Objects.requireNonNull;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.Lists;

/**
 * A day to be worked: the kitchen, the order, and what is on hand in place of what the recipe says.
 *
 * @param kitchen the kitchen
 * @param order how much of what, and when
 * @param swaps what goes in place of what, one after another
 * @param plantBased whether all dairy, egg and honey is replaced as well; no claim of allergen-free
 */
public record DayPlan(Kitchen kitchen, Order order, List<Swap> swaps, boolean plantBased)
    implements Serializable {

  /** What kind of ingredient is exchanged. */
  public enum SwapKind {
    /** One flour for another; the water follows. */
    FLOUR,
    /** One fat for another; water and salt follow. */
    FAT,
    /** One liquid for another; water, fat and sugars follow. */
    LIQUID
  }

  /**
   * One ingredient in place of another.
   *
   * @param kind of what kind both are
   * @param from what the recipe says, null for the first of its kind
   * @param to what is on hand
   */
  public record Swap(SwapKind kind, @Nullable Ingredient from, Ingredient to)
      implements Serializable {
    /**
     * Checks that there is something on hand.
     *
     * @param kind of what kind both are
     * @param from what the recipe says, null for the first of its kind
     * @param to what is on hand
     */
    public Swap {
      requireNonNull(kind, "kind");
      requireNonNull(to, "to");
    }

    /** What the recipe says, if it was named. */
    Optional<Ingredient> named() {
      return Optional.ofNullable(from);
    }
  }

  /**
   * Copies the swaps, and refuses a bath that is hotter than water boils in this kitchen.
   *
   * @param kitchen the kitchen
   * @param order how much of what, and when
   * @param swaps what goes in place of what, one after another
   * @param plantBased whether all dairy, egg and honey is replaced as well; no claim of
   *     allergen-free
   */
  public DayPlan {
    requireNonNull(kitchen, "kitchen");
    requireNonNull(order, "order");
    swaps = Lists.copy(swaps, "swaps");
    StepOrder.check(order.product().procedure().steps(), kitchen);
  }

  /**
   * A day with nothing exchanged.
   *
   * @param kitchen the kitchen
   * @param order how much of what, and when
   * @return the plan
   */
  public static DayPlan of(Kitchen kitchen, Order order) {
    return new DayPlan(kitchen, order, List.of(), false);
  }

  /**
   * The plan with one more exchange.
   *
   * @param swap what goes in place of what
   * @return the changed plan
   */
  public DayPlan with(Swap swap) {
    requireNonNull(swap, "swap");
    List<Swap> more = new ArrayList<>(swaps);
    more.add(swap);
    return new DayPlan(kitchen, order, more, plantBased);
  }

  /**
   * The plan with all dairy, egg and honey replaced by plants. This is not a claim of
   * allergen-free, nor of free of milk allergen.
   *
   * @return the changed plan
   */
  public DayPlan fromPlants() {
    return new DayPlan(kitchen, order, swaps, true);
  }
}

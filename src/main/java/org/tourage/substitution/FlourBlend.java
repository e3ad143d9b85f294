package org.tourage.substitution;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.FRACTION;
import static org.tourage.quantity.BakeryUnits.PERCENT;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.LinearProgramme;
import org.tourage.internal.Numbers;
import org.tourage.internal.Ordered;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Given;

/**
 * A blend of flours, and of gluten, that has a wanted protein, ash or absorption on the basis of 14
 * % moisture. Two parts and one target have one answer (the trade's square); with more parts the
 * cheapest or the closest blend is found by a linear programme. Each part's dry matter counts, so
 * flours of different moisture blend right. Immutable.
 *
 * <pre>{@code
 * FlourBlend.of(weak, strong).to(FlourProperty.PROTEIN, percent(12)).cheapest();
 * }</pre>
 *
 * @param parts the parts
 * @param targets what the blend is to have, in percent at 14 % moisture
 */
public record FlourBlend(List<Part> parts, Map<FlourProperty, Amount<Dimensionless>> targets)
    implements Serializable {

  /**
   * A part of a blend.
   *
   * @param flour a flour, or gluten
   * @param cost what a kilogram costs, in any currency, not negative
   * @param least its least share
   * @param most its greatest share
   */
  public record Part(
      Ingredient flour, double cost, Amount<Dimensionless> least, Amount<Dimensionless> most)
      implements Serializable {
    /**
     * Checks the figures.
     *
     * @param flour a flour, or gluten
     * @param cost what a kilogram costs, in any currency, not negative
     * @param least its least share
     * @param most its greatest share
     */
    public Part {
      requireNonNull(least, "least");
      requireNonNull(most, "most");
      requireNonNull(flour, "flour");
      double low = least.in(FRACTION);
      double high = most.in(FRACTION);
      boolean shares = low >= 0 && low <= high && high <= 1;
      if (!shares || !(cost >= 0) || Double.isInfinite(cost)) {
        throw new BakeryException(
            Reason.OUT_OF_RANGE,
            "a blend can't have such a part",
            flour.name() + ", cost " + cost + ", " + least + " to " + most,
            "give a cost from 0 and shares from 0 % to 100 %, the least first");
      }
    }

    /**
     * Any share of a flour, at no cost.
     *
     * @param flour the flour, or gluten
     * @return the part
     */
    public static Part of(Ingredient flour) {
      return new Part(flour, 0, PERCENT.amount(0), PERCENT.amount(100));
    }

    /**
     * The same at a cost.
     *
     * @param perKilogram in any currency
     * @return the part
     */
    public Part costing(double perKilogram) {
      return new Part(flour, perKilogram, least, most);
    }

    /**
     * The same within bounds.
     *
     * @param low its least share
     * @param high its greatest share
     * @return the part
     */
    public Part between(Quantity<Dimensionless> low, Quantity<Dimensionless> high) {
      return new Part(
          flour,
          cost,
          Given.ratio("the low", requireNonNull(low, "low")),
          Given.ratio("the high", requireNonNull(high, "high")));
    }
  }

  /**
   * What was found.
   *
   * @param shares the share of each part by mass, in the order of the parts
   * @param reached each target's property as the blend has it
   * @param cost what a kilogram of the blend costs
   */
  public record Result(
      Map<Ingredient, Amount<Dimensionless>> shares,
      Map<FlourProperty, Amount<Dimensionless>> reached,
      double cost)
      implements Serializable {
    /**
     * Copies the maps.
     *
     * @param shares the share of each part by mass, in the order of the parts
     * @param reached each target's property as the blend has it
     * @param cost what a kilogram of the blend costs
     */
    public Result {
      requireNonNull(shares, "shares");
      requireNonNull(reached, "reached");
      shares = Ordered.map(shares);
      reached = Collections.unmodifiableMap(new EnumMap<>(reached));
    }

    /**
     * The share of a flour.
     *
     * @param flour the flour
     * @return its share by mass; 0 % if it is not in the blend
     */
    public Amount<Dimensionless> share(Ingredient flour) {
      return shares.getOrDefault(flour, PERCENT.amount(0));
    }

    /**
     * What the blend has of a target's property.
     *
     * @param property the property of one of the targets
     * @return percent at 14 % moisture
     * @throws BakeryException if it was no target
     */
    public Amount<Dimensionless> reached(FlourProperty property) {
      Amount<Dimensionless> value = reached.get(property);
      if (value == null) {
        throw new BakeryException(
            Reason.UNKNOWN_NAME,
            "this was no target of the blend",
            property.word(),
            "use one of " + reached.keySet());
      }
      return value;
    }

    /** {@code 95.1 % bread flour, 4.9 % vital wheat gluten: protein 13.5 %}. */
    @Override
    public String toString() {
      AmountFormat format = AmountFormat.metric();
      return shares.entrySet().stream()
              .map(e -> format.percent(e.getValue()) + " " + e.getKey().name())
              .collect(Collectors.joining(", "))
          + ": "
          + reached.entrySet().stream()
              .map(e -> e.getKey().word() + " " + format.percent(e.getValue()))
              .collect(Collectors.joining(", "))
          + " at 14 % moisture";
    }
  }

  /**
   * Copies the collections.
   *
   * @param parts the parts
   * @param targets what the blend is to have, in percent at 14 % moisture
   */
  public FlourBlend {
    requireNonNull(parts, "parts");
    requireNonNull(targets, "targets");
    parts = List.copyOf(parts);
    EnumMap<FlourProperty, Amount<Dimensionless>> copy = new EnumMap<>(FlourProperty.class);
    copy.putAll(targets);
    targets = Collections.unmodifiableMap(copy);
    if (parts.size() < 2) {
      throw new BakeryException(
          Reason.MISSING, "a blend has two parts or more", parts.size() + "", "name another flour");
    }
  }

  /**
   * A blend of any shares.
   *
   * @param flours the flours, and gluten
   * @return the blend without targets yet
   */
  public static FlourBlend of(Ingredient... flours) {
    List<Part> parts = new ArrayList<>();
    for (Ingredient flour : flours) {
      parts.add(Part.of(flour));
    }
    return new FlourBlend(parts, Map.of());
  }

  /**
   * A blend of parts with costs and bounds.
   *
   * @param parts the parts
   * @return the blend without targets yet
   */
  public static FlourBlend of(Part... parts) {
    return new FlourBlend(List.of(parts), Map.of());
  }

  /**
   * Adds a target.
   *
   * @param property what the blend is to have
   * @param wanted how much, at 14 % moisture
   * @return the blend
   */
  public FlourBlend to(FlourProperty property, Quantity<Dimensionless> wanted) {
    Map<FlourProperty, Amount<Dimensionless>> more = new EnumMap<>(FlourProperty.class);
    more.putAll(targets);
    more.put(property, Given.ratio("the wanted", requireNonNull(wanted, "wanted")).to(PERCENT));
    return new FlourBlend(parts, more);
  }

  /**
   * The share of the second of two flours by the trade's square, (t − low)/(high − low), for equal
   * moisture.
   *
   * @param low the figure of the first
   * @param high the figure of the second
   * @param target the figure wanted, between them
   * @return the share of the second
   * @throws BakeryException if the target does not lie between them
   */
  public static Amount<Dimensionless> square(
      Quantity<Dimensionless> low, Quantity<Dimensionless> high, Quantity<Dimensionless> target) {
    double a = PERCENT.measure("the low", requireNonNull(low, "low"));
    double b = PERCENT.measure("the high", requireNonNull(high, "high"));
    double t = PERCENT.measure("the target", requireNonNull(target, "target"));
    boolean between = (t - a) * (b - t) >= 0 && a != b;
    if (!between) {
      throw new BakeryException(
          Reason.OUT_OF_RANGE,
          "the target does not lie between the two",
          Given.ratio("the target", target).to(PERCENT).toString(),
          "give a figure from "
              + Given.ratio("the low", low)
              + " to "
              + Given.ratio("the high", high));
    }
    return PERCENT.amount(100 * (t - a) / (b - a));
  }

  /** Dry matter counts: Σ s·dry·(x14 − t) = 0. */
  private double[] row(FlourProperty property, double target) {
    double[] row = new double[parts.size()];
    for (int i = 0; i < row.length; i++) {
      Ingredient flour = parts.get(i).flour;
      row[i] = FlourProperty.dry(flour) / 86 * (property.of(flour) - target);
    }
    return row;
  }

  /**
   * The blend of least cost that meets all targets.
   *
   * @return the blend
   * @throws BakeryException if no blend meets them; the message says which target or bound fails
   */
  public Result cheapest() {
    return solve(new ArrayList<>(targets.keySet())).orElseThrow(this::infeasible);
  }

  private Optional<Result> solve(List<FlourProperty> wanted) {
    double[] costs = new double[parts.size()];
    for (int i = 0; i < costs.length; i++) {
      costs[i] = parts.get(i).cost;
    }
    List<double[]> rows = new ArrayList<>();
    for (FlourProperty property : wanted) {
      rows.add(row(property, requireNonNull(targets.get(property)).in(PERCENT)));
    }
    return programme(rows, costs).map(this::result);
  }

  /** Shares: the least of cost·s with Σ s = 1, bounds, and each row·s = 0. */
  private Optional<double[]> programme(List<double[]> zeros, double[] cost) {
    int n = parts.size();
    int m = zeros.size() + 1 + n;
    double[][] a = new double[m][2 * n];
    double[] b = new double[m];
    // s = least + u, u + v = most − least
    for (int r = 0; r < zeros.size(); r++) {
      for (int i = 0; i < n; i++) {
        a[r][i] = zeros.get(r)[i];
        b[r] -= zeros.get(r)[i] * parts.get(i).least.in(FRACTION);
      }
    }
    int sum = zeros.size();
    b[sum] = 1;
    for (int i = 0; i < n; i++) {
      double least = parts.get(i).least.in(FRACTION);
      a[sum][i] = 1;
      b[sum] -= least;
      a[sum + 1 + i][i] = 1;
      a[sum + 1 + i][n + i] = 1;
      b[sum + 1 + i] = parts.get(i).most.in(FRACTION) - least;
    }
    double[] full = Arrays.copyOf(cost, 2 * n);
    return LinearProgramme.minimise(a, b, full)
        .map(
            u -> {
              double[] s = new double[n];
              for (int i = 0; i < n; i++) {
                s[i] = parts.get(i).least.in(FRACTION) + u[i];
              }
              return s;
            });
  }

  private Result result(double[] s) {
    Map<Ingredient, Amount<Dimensionless>> shares = new LinkedHashMap<>();
    double cost = 0;
    for (int i = 0; i < s.length; i++) {
      shares.merge(parts.get(i).flour, PERCENT.amount(100 * s[i]), Amount::add);
      cost += s[i] * parts.get(i).cost;
    }
    Map<FlourProperty, Amount<Dimensionless>> reached = new EnumMap<>(FlourProperty.class);
    for (FlourProperty property : targets.keySet()) {
      reached.put(property, PERCENT.amount(value(property, s)));
    }
    return new Result(shares, reached, cost);
  }

  /**
   * The blend that comes closest where not all targets can be met: the least sum of the misses,
   * each by its target. Where several are as close, the cheapest of them.
   *
   * @return the blend
   * @throws BakeryException if the bounds on the shares alone contradict each other
   */
  public Result closest() {
    int n = parts.size();
    List<FlourProperty> wanted = new ArrayList<>(targets.keySet());
    int k = wanted.size();
    // unknown: u and v as above, then over and under for each target
    int columns = 2 * n + 2 * k;
    double[][] a = new double[k + 1 + n][columns];
    double[] b = new double[k + 1 + n];
    double[] cost = new double[columns];
    double dearest = parts.stream().mapToDouble(Part::cost).max().orElse(0);
    for (int r = 0; r < k; r++) {
      double target = requireNonNull(targets.get(wanted.get(r))).in(PERCENT);
      double[] row = row(wanted.get(r), target);
      for (int i = 0; i < n; i++) {
        a[r][i] = row[i];
        b[r] -= row[i] * parts.get(i).least.in(FRACTION);
      }
      a[r][2 * n + r] = 1;
      a[r][2 * n + k + r] = -1;
      cost[2 * n + r] = 1 / Math.max(target, 1e-6);
      cost[2 * n + k + r] = cost[2 * n + r];
    }
    b[k] = 1;
    for (int i = 0; i < n; i++) {
      double least = parts.get(i).least.in(FRACTION);
      a[k][i] = 1;
      b[k] -= least;
      a[k + 1 + i][i] = 1;
      a[k + 1 + i][n + i] = 1;
      b[k + 1 + i] = parts.get(i).most.in(FRACTION) - least;
      // the cost decides among equals only
      cost[i] = dearest == 0 ? 0 : 1e-7 * parts.get(i).cost / dearest;
    }
    double[] u = LinearProgramme.minimise(a, b, cost).orElseThrow(this::infeasible);
    double[] s = new double[n];
    for (int i = 0; i < n; i++) {
      s[i] = parts.get(i).least.in(FRACTION) + u[i];
    }
    return result(s);
  }

  /** Says what fails: the bounds, one target, or several together. */
  private BakeryException infeasible() {
    if (programme(List.of(), new double[parts.size()]).isEmpty()) {
      double least = parts.stream().mapToDouble(p -> p.least.in(PERCENT)).sum();
      double most = parts.stream().mapToDouble(p -> p.most.in(PERCENT)).sum();
      return new BakeryException(
          Reason.INCONSISTENT,
          "the bounds on the shares leave no blend",
          "least shares sum to "
              + Numbers.decimals(least, 2)
              + " %, greatest to "
              + Numbers.decimals(most, 2)
              + " %",
          "let 100 % lie between the two sums");
    }
    for (Map.Entry<FlourProperty, Amount<Dimensionless>> target : targets.entrySet()) {
      double low = extreme(target.getKey(), 1);
      double high = extreme(target.getKey(), -1);
      double wanted = target.getValue().in(PERCENT);
      if (wanted < low - 1e-9 || wanted > high + 1e-9) {
        return new BakeryException(
            Reason.OUT_OF_RANGE,
            "no blend within the bounds has this " + target.getKey().word(),
            target.getValue().toString(),
            "these parts reach "
                + Numbers.decimals(low, 2)
                + " % to "
                + Numbers.decimals(high, 2)
                + " %; widen a bound, add another part, or take closest()");
      }
    }
    String conflict =
        targets.keySet().stream()
            .filter(
                left ->
                    solve(targets.keySet().stream().filter(p -> p != left).toList()).isPresent())
            .map(FlourProperty::word)
            .collect(Collectors.joining(" or "));
    return new BakeryException(
        Reason.INCONSISTENT,
        "each target can be met, but not all together",
        targets.toString(),
        (conflict.isEmpty() ? "give up more than one" : "give up " + conflict)
            + ", add another part, or take closest()");
  }

  /** The least (sign 1) or greatest (sign −1) that the parts reach: by halving on the target. */
  private double extreme(FlourProperty property, int sign) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Part part : parts) {
      low = Math.min(low, property.of(part.flour));
      high = Math.max(high, property.of(part.flour));
    }
    double[] none = new double[parts.size()];
    Optional<double[]> any = programme(List.of(), none);
    double inside = value(property, any.orElseThrow());
    double outside = sign > 0 ? low : high;
    if (programme(List.of(row(property, outside)), none).isPresent()) {
      return outside;
    }
    for (int i = 0; i < 60; i++) {
      double middle = (inside + outside) / 2;
      if (programme(List.of(row(property, middle)), none).isPresent()) {
        inside = middle;
      } else {
        outside = middle;
      }
    }
    return inside;
  }

  private double value(FlourProperty property, double[] s) {
    double matter = 0;
    double held = 0;
    for (int i = 0; i < s.length; i++) {
      double dry = FlourProperty.dry(parts.get(i).flour) * s[i];
      matter += dry;
      held += dry * property.of(parts.get(i).flour);
    }
    return held / matter;
  }
}

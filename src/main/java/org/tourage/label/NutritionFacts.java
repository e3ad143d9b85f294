package org.tourage.label;

import static java.util.Objects.requireNonNull;
import static org.tourage.quantity.BakeryUnits.GRAM;
import static org.tourage.quantity.BakeryUnits.KILOCALORIE;
import static org.tourage.quantity.BakeryUnits.KILOJOULE;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.quantity.Mass;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.ingredient.Ingredient;
import org.tourage.internal.Numbers;
import org.tourage.internal.TextTable;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;

/**
 * The nutrients of a mass of the baked product: 100 g, a piece, a serving or all of it.
 *
 * @param basis what it is of, for example {@code 100 g}
 * @param mass the mass that it is of
 * @param figures one figure for each nutrient, in the order of {@link Nutrient}
 */
public record NutritionFacts(String basis, Amount<Mass> mass, List<NutrientFigure> figures)
    implements Serializable {

  /**
   * Copies the list and checks that every nutrient is there.
   *
   * @param basis what it is of
   * @param mass the mass that it is of
   * @param figures one figure for each nutrient
   */
  public NutritionFacts {
    requireNonNull(basis, "basis");
    requireNonNull(mass, "mass");
    figures = List.copyOf(figures);
    boolean inOrder = figures.size() == Nutrient.values().length;
    for (int i = 0; inOrder && i < figures.size(); i++) {
      inOrder = figures.get(i).nutrient().ordinal() == i;
    }
    if (!inOrder) {
      throw new BakeryException(
          Reason.INCONSISTENT,
          "facts hold one figure for each nutrient, in order",
          figures.size() + " figures",
          "take them from Nutrition");
    }
  }

  /**
   * The figure of a nutrient.
   *
   * @param nutrient the nutrient
   * @return its figure, which can be unknown
   */
  public NutrientFigure figure(Nutrient nutrient) {
    return figures.get(nutrient.ordinal());
  }

  /**
   * The mass of a nutrient.
   *
   * @param nutrient the nutrient
   * @return the mass; empty if an ingredient does not report it
   */
  public Optional<Amount<Mass>> mass(Nutrient nutrient) {
    return figure(nutrient).mass();
  }

  /**
   * The energy by the factors of a scheme: Regulation (EU) No 1169/2011, Annex XIV, or the general
   * factors of 21 CFR 101.9(c)(1)(i)(B).
   *
   * @param scheme whose factors
   * @return the energy, which can be unknown
   */
  public EnergyFigure energy(LabelScheme scheme) {
    double kilojoules = 0;
    double kilocalories = 0;
    Set<Ingredient> unknown = new LinkedHashSet<>();
    for (Map.Entry<Nutrient, LabelTables.Factor> entry : LabelTables.factors(scheme).entrySet()) {
      NutrientFigure figure = figure(entry.getKey());
      double grams = figure.atLeast().in(GRAM);
      kilojoules += grams * entry.getValue().kilojoules();
      kilocalories += grams * entry.getValue().kilocalories();
      unknown.addAll(figure.unknownIn());
    }
    return new EnergyFigure(
        scheme,
        KILOJOULE.amount(kilojoules),
        KILOCALORIE.amount(kilocalories),
        new ArrayList<>(unknown));
  }

  /**
   * A nutrient as a label rounds it.
   *
   * @param scheme whose rules
   * @param nutrient the nutrient
   * @return for example {@code 3.5 g}, or {@code unknown}
   */
  public String printed(LabelScheme scheme, Nutrient nutrient) {
    return mass(nutrient)
        .map(m -> LabelRounding.write(scheme, nutrient, m))
        .orElse(Nutrition.UNKNOWN);
  }

  /**
   * The lines of a nutrition declaration, a draft and no legal label.
   *
   * @param scheme whose rules
   * @return a table with the rounded figures, the percent of reference intake or daily value, and
   *     the ingredients that do not report a figure
   */
  public String table(LabelScheme scheme) {
    TextTable table = new TextTable(1);
    String metric = AmountFormat.metric().mass(mass);
    table.row(
        "per " + basis + (basis.equals(metric) ? "" : " (" + metric + ")"),
        "",
        scheme == LabelScheme.EU ? "% reference intake" : "% daily value");
    EnergyFigure energy = energy(scheme);
    table.row(
        scheme == LabelScheme.EU ? "energy" : "calories",
        energy.printed(),
        scheme == LabelScheme.EU
            ? energy
                .kilojoules()
                .map(e -> percent(LabelRounding.shareOfIntake(e).value()))
                .orElse("")
            : "");
    for (Nutrient nutrient : Nutrient.of(scheme)) {
      table.row(
          nutrient.word(),
          printed(scheme, nutrient),
          mass(nutrient)
              .flatMap(m -> LabelRounding.share(scheme, nutrient, m))
              .map(share -> percent(share.value()))
              .orElse(""));
    }
    Set<Ingredient> silent = new LinkedHashSet<>(energy.unknownIn());
    Nutrient.of(scheme).forEach(n -> silent.addAll(figure(n).unknownIn()));
    if (!silent.isEmpty()) {
      table.heading(
          "unknown, not nought: not reported for "
              + silent.stream().map(Ingredient::name).collect(Collectors.joining(", ")));
    }
    table.heading("(" + Nutrition.DRAFT + ")");
    return table.toString();
  }

  private static String percent(double value) {
    return Numbers.fixed(value, 0) + " %";
  }

  /** The figures that are known, not rounded as a label. */
  @Override
  public String toString() {
    return "per "
        + basis
        + " ("
        + AmountFormat.metric().mass(mass)
        + "): "
        + figures.stream().map(NutrientFigure::toString).collect(Collectors.joining(", "));
  }
}

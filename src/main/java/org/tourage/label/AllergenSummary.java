package org.tourage.label;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.tourage.advice.Advice;
import org.tourage.formula.Formula;
import org.tourage.formula.Line;
import org.tourage.ingredient.Allergen;
import org.tourage.ingredient.Ingredient;
import org.tourage.ingredient.Origin;
import org.tourage.internal.Ordered;

/**
 * The allergens that a formula's ingredients bring, in the words of the two legal lists (21 U.S.C.
 * 321(qq); Regulation (EU) No 1169/2011, Annex II), the finish included. It is a help for the
 * person who writes the label, who must read the labels of the products in hand and follow the
 * local law. To check are also malted barley in wheat flours, wheat and barley by contact in oats,
 * and sulphites in dried fruit, molasses, potato flour and coconut milk.
 *
 * @param contains allergens that ingredients are or always hold
 * @param check allergens that products of the kinds used may hold
 * @param labelsToRead ingredients whose labels decide
 * @param plantBased whether no ingredient is of animal origin, as far as the table knows; false if
 *     nobody knows
 * @param unknown ingredients whose allergens nobody has said: what they bring is missing above
 */
public record AllergenSummary(
    Set<Allergen> contains,
    Set<Allergen> check,
    List<Ingredient> labelsToRead,
    boolean plantBased,
    List<Ingredient> unknown)
    implements Serializable {

  /**
   * Copies the collections.
   *
   * @param contains allergens that ingredients are or always hold
   * @param check allergens that products of the kinds used may hold
   * @param labelsToRead ingredients whose labels decide
   * @param plantBased whether no ingredient is of animal origin, as far as the table knows
   * @param unknown ingredients whose allergens nobody has said
   */
  public AllergenSummary {
    contains = Ordered.set(contains);
    check = Ordered.set(check);
    labelsToRead = List.copyOf(labelsToRead);
    unknown = List.copyOf(unknown);
  }

  /**
   * The summary of a formula.
   *
   * @param formula the formula
   * @return the summary
   */
  public static AllergenSummary of(Formula formula) {
    EnumSet<Allergen> contains = EnumSet.noneOf(Allergen.class);
    EnumSet<Allergen> check = EnumSet.noneOf(Allergen.class);
    Set<Ingredient> read = new LinkedHashSet<>();
    Set<Ingredient> silent = new LinkedHashSet<>();
    boolean plant = true;
    for (Line line : formula.lines()) {
      Ingredient ingredient = line.ingredient();
      contains.addAll(ingredient.allergens());
      Set<Allergen> toCheck = EnumSet.noneOf(Allergen.class);
      toCheck.addAll(ingredient.allergensToCheck());
      toCheck.addAll(LabelChecks.of(ingredient));
      check.addAll(toCheck);
      // where nobody said what it holds, only a stated origin tells
      boolean told = ingredient.areAllergensKnown() || ingredient.origin() == Origin.PLANT;
      plant &=
          ingredient.origin() != Origin.ANIMAL && told && !ingredient.composition().isUnknown();
      if (!ingredient.areAllergensKnown()) {
        silent.add(ingredient);
      }
      if (ingredient.origin() == Origin.CHECK_LABEL || !toCheck.isEmpty()) {
        read.add(ingredient);
      }
    }
    check.removeAll(contains);
    return new AllergenSummary(
        contains, check, new ArrayList<>(read), plant, new ArrayList<>(silent));
  }

  /**
   * The groups of the list of the United States that the formula contains.
   *
   * @return for example {@code [tree nuts (almond), wheat]}
   */
  public List<String> unitedStates() {
    return groups(contains, true);
  }

  /**
   * The groups of the list of the European Union that the formula contains.
   *
   * @return for example {@code [cereals containing gluten (wheat), nuts (almond)]}
   */
  public List<String> europeanUnion() {
    return groups(contains, false);
  }

  private static List<String> groups(Set<Allergen> allergens, boolean us) {
    Set<String> groups = new TreeSet<>();
    for (Allergen allergen : allergens) {
      (us ? allergen.unitedStates() : allergen.europeanUnion())
          .ifPresent(
              group ->
                  groups.add(
                      group.startsWith(allergen.word())
                          ? group
                          : group + named(group, allergens, us)));
    }
    return List.copyOf(groups);
  }

  /** The members of a group that names several foods. */
  private static String named(String group, Set<Allergen> allergens, boolean us) {
    boolean several =
        group.equals("tree nuts") || group.equals("nuts") || group.startsWith("cereals");
    if (!several) {
      return "";
    }
    return allergens.stream()
        .sorted()
        .filter(a -> (us ? a.unitedStates() : a.europeanUnion()).filter(group::equals).isPresent())
        .map(Allergen::word)
        .collect(Collectors.joining(", ", " (", ")"));
  }

  /**
   * The cautions that belong to it.
   *
   * @return safety advice, at least one
   */
  public List<Advice> advice() {
    List<Advice> advice = new ArrayList<>();
    String words =
        contains.isEmpty()
            ? "no allergen of the legal lists is known to be in the ingredients"
            : "contains "
                + String.join(", ", unitedStates())
                + " (US list); "
                + String.join(", ", europeanUnion())
                + " (EU list)";
    advice.add(
        Advice.of(
            "ALLERGENS",
            words,
            "Read the labels of the products in hand and follow the local law on declaring allergens"));
    if (!unknown.isEmpty()) {
      advice.add(
          Advice.of(
              "ALLERGENS_UNKNOWN",
              "the allergens of " + unknownNames() + " are unknown: it can hold any",
              "Read its label and state them before anyone eats of it; no list here is complete"));
    }
    if (!labelsToRead.isEmpty()) {
      advice.add(
          Advice.of(
              "LABEL_DECIDES",
              "products differ: "
                  + labelsToRead.stream().map(Ingredient::name).collect(Collectors.joining(", "))
                  + (check.isEmpty()
                      ? ""
                      : " may hold "
                          + check.stream()
                              .sorted()
                              .map(Allergen::word)
                              .collect(Collectors.joining(", "))),
              "Read the label before you say what is in the pastry"));
    }
    if (contains.contains(Allergen.COCONUT) || check.contains(Allergen.COCONUT)) {
      advice.add(
          Advice.of(
              "COCONUT_NOT_LISTED",
              "coconut is no tree nut on the US list any more, and not on the EU list",
              "Name it in the ingredients; some people react to it, and local lists differ"));
    }
    if (withoutGlutenCereal()) {
      advice.add(
          Advice.of(
              "GLUTEN_FREE_IS_A_CLAIM",
              "no cereal with gluten is known to be in it, which does not make it gluten-free",
              "\"Gluten-free\" is a legal claim of at most 20 mg/kg in the food as sold: flour dust,"
                  + " shared tools and oats break it; test, or do not claim it"));
    }
    if (plantBased) {
      advice.add(
          Advice.of(
              "PLANT_BASED_IS_NO_CLAIM",
              "plant-based is not a claim of allergen-free, nor of free of milk allergen",
              "Traces come with ingredients, shared tools and shared ovens"));
    }
    return advice;
  }

  private String unknownNames() {
    return unknown.stream().map(Ingredient::name).collect(Collectors.joining(", "));
  }

  /**
   * The line that must stand with every list of allergens while some are unknown.
   *
   * @return for example {@code Allergens unknown: sprinkles}; empty if all are known
   */
  public Optional<String> unknownText() {
    return unknown.isEmpty()
        ? Optional.empty()
        : Optional.of("Allergens unknown: " + unknownNames());
  }

  private boolean withoutGlutenCereal() {
    return contains.stream()
        .noneMatch(
            a ->
                a == Allergen.WHEAT
                    || a == Allergen.RYE
                    || a == Allergen.BARLEY
                    || a == Allergen.OAT);
  }

  /** The two lists, and what is not known. */
  @Override
  public String toString() {
    return "US: "
        + String.join(", ", unitedStates())
        + "; EU: "
        + String.join(", ", europeanUnion())
        + (check.isEmpty()
            ? ""
            : "; check labels for "
                + check.stream().sorted().map(Allergen::word).collect(Collectors.joining(", ")))
        + unknownText().map(text -> "; " + text).orElse("");
  }
}

package org.tourage.ingredient;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;

/**
 * Ingredients by id and by everyday name. {@link #builtIn()} reads the names when it is first
 * called and each ingredient when it is first asked for; {@link #with(Ingredient)} adds one's own,
 * which takes precedence. Immutable.
 *
 * <pre>{@code
 * Catalogue.builtIn().require("bread flour").composition();
 * }</pre>
 */
public final class Catalogue {
  private static final int NEAR_MATCHES = 3;
  private static final String NONE_NEAR =
      "no name like it is known: add it as an ingredient of your own, from its label";

  /** One's own by id. */
  private final Map<String, Ingredient> own;

  /** One's own by looked-up name. */
  private final Map<String, Ingredient> ownNames;

  private Catalogue(Map<String, Ingredient> own, Map<String, Ingredient> ownNames) {
    this.own = own;
    this.ownNames = ownNames;
  }

  /** Loads on first use, not when the class {@link Catalogue} is. */
  private static final class BuiltIn {
    static final CatalogueTable TABLE = new CatalogueTable();
    static final Catalogue CATALOGUE = new Catalogue(Map.of(), Map.of());

    private BuiltIn() {}
  }

  /**
   * The catalogue of the library.
   *
   * @return the same every time
   */
  public static Catalogue builtIn() {
    return BuiltIn.CATALOGUE;
  }

  /**
   * This catalogue with one more ingredient, which takes precedence over one of the same id or
   * name. It goes by every name that one of the same id had.
   *
   * @param ingredient the ingredient
   * @return a new catalogue
   */
  public Catalogue with(Ingredient ingredient) {
    requireNonNull(ingredient, "ingredient");
    Map<String, Ingredient> ids = new LinkedHashMap<>(own);
    Map<String, Ingredient> names = new LinkedHashMap<>(ownNames);
    names.replaceAll((name, known) -> known.sameIdAs(ingredient) ? ingredient : known);
    ids.put(ingredient.id(), ingredient);
    names.put(CatalogueNames.key(ingredient.id()), ingredient);
    names.put(CatalogueNames.key(ingredient.name()), ingredient);
    return new Catalogue(ids, names);
  }

  /**
   * This catalogue with one more ingredient that goes by several everyday names.
   *
   * @param ingredient the ingredient
   * @param names further names, each of which takes precedence over a known one
   * @return a new catalogue
   */
  public Catalogue with(Ingredient ingredient, Collection<String> names) {
    Catalogue more = with(ingredient);
    Map<String, Ingredient> all = new LinkedHashMap<>(more.ownNames);
    for (String name : names) {
      all.put(CatalogueNames.key(name), ingredient);
    }
    return new Catalogue(more.own, all);
  }

  /**
   * Every ingredient.
   *
   * @return the ingredients, in the order of the tables, one's own last
   */
  public Collection<Ingredient> all() {
    List<Ingredient> all = new ArrayList<>();
    Set<String> rest = new LinkedHashSet<>(own.keySet());
    for (String id : BuiltIn.TABLE.ids()) {
      all.add(ofId(id));
      rest.remove(id);
    }
    rest.forEach(id -> all.add(requireNonNull(own.get(id))));
    return Collections.unmodifiableList(all);
  }

  /**
   * Looks up an ingredient by id or everyday name; capitals, hyphens and a plural do not matter,
   * nor do words for what is done to it or how warm it is ({@code lukewarm water}, {@code melted
   * butter}).
   *
   * @param name for example {@code bread flour}
   * @return the ingredient, if there is one
   */
  public Optional<Ingredient> find(String name) {
    String key = CatalogueNames.key(name);
    Ingredient found = exact(key);
    boolean aNoteFollows = name.indexOf(',') >= 0;
    return Optional.ofNullable(
        found != null || aNoteFollows ? found : exact(CatalogueNames.withoutState(key)));
  }

  private @Nullable Ingredient exact(String key) {
    Ingredient mine = ownNames.get(key);
    if (mine != null) {
      return mine;
    }
    String id = BuiltIn.TABLE.id(key);
    return id == null ? null : ofId(id);
  }

  /**
   * Looks up an ingredient that must be there.
   *
   * @param name for example {@code bread flour}
   * @return the ingredient
   * @throws BakeryException if there is none; the message offers near matches
   */
  public Ingredient require(String name) {
    return find(name)
        .orElseThrow(
            () ->
                new BakeryException(
                    Reason.UNKNOWN_NAME, "no such ingredient", "\"" + name + "\"", hint(name)));
  }

  /**
   * What is usually taken in place of an ingredient of animals. It is another ingredient, with
   * other allergens.
   *
   * @param ingredient an ingredient
   * @return the ingredient of plants; empty where nothing is usual
   */
  public Optional<Ingredient> plantSubstitute(Ingredient ingredient) {
    return ingredient.origin() == Origin.ANIMAL
        ? ExchangeFacts.plant(ingredient).map(this::require)
        : Optional.empty();
  }

  /**
   * The names nearest in meaning to a name: a misspelt word is forgiven, a thing of another kind is
   * not offered (ground cinnamon is no sugar).
   *
   * @param name the name
   * @return up to three everyday names, the nearest first; none if nothing is near
   */
  public List<String> near(String name) {
    String wanted = CatalogueNames.withoutState(CatalogueNames.key(name));
    if (wanted.isEmpty()) {
      return List.of();
    }
    Map<String, String> names = new LinkedHashMap<>(BuiltIn.TABLE.names());
    ownNames.forEach((key, ingredient) -> names.put(key, ingredient.id()));
    Set<String> ids = new LinkedHashSet<>(BuiltIn.TABLE.nearest(CatalogueNames.key(name)));
    ids.addAll(CatalogueNames.nearest(wanted, names));
    return ids.stream().limit(NEAR_MATCHES).map(this::nameOf).toList();
  }

  /**
   * The known ingredient whose name was meant, if a name that is not known is a known one with one
   * or two letters wrong ({@code bred flour}). A number in a name is never taken for another.
   *
   * @param name the name
   * @return the everyday name of the ingredient that was meant; empty for a known name and for one
   *     that is like none
   */
  public Optional<String> mistyped(String name) {
    if (find(requireNonNull(name, "name")).isPresent()) {
      return Optional.empty();
    }
    String wanted = CatalogueNames.key(name);
    return Stream.concat(ownNames.keySet().stream(), BuiltIn.TABLE.names().keySet().stream())
        .filter(known -> !known.isEmpty() && CatalogueNames.isMistyped(wanted, known))
        .min(
            Comparator.<String>comparingInt(known -> CatalogueNames.edits(wanted, known))
                .thenComparing(known -> known))
        .map(known -> require(known).name());
  }

  private Ingredient ofId(String id) {
    Ingredient mine = own.get(id);
    return mine == null ? BuiltIn.TABLE.ingredient(id) : mine;
  }

  private String nameOf(String id) {
    return ofId(id).name();
  }

  /**
   * What to write in place of a name that is not known.
   *
   * @param name the name
   * @return for example {@code did you mean bread flour?}
   */
  public String hint(String name) {
    List<String> near = near(name);
    return near.isEmpty() ? NONE_NEAR : "did you mean " + String.join(", ", near) + "?";
  }
}

package org.tourage.ingredient;

import static org.tourage.quantity.BakeryUnits.FRACTION;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tourage.internal.Csv;

/** What the tables say about putting one ingredient in place of another; read when first needed. */
final class ExchangeFacts {
  private static final Map<String, Map<String, String>> BY_ID = new LinkedHashMap<>();
  private static final List<Map<String, String>> PLANTS =
      Csv.table(ExchangeFacts.class, "plant-substitutes.csv");

  static {
    for (Map<String, String> row : Csv.table(ExchangeFacts.class, "exchange-facts.csv")) {
      BY_ID.put(Csv.field(row, "id"), row);
    }
  }

  private ExchangeFacts() {}

  static void addTo(Ingredient.Builder builder, String id) {
    Map<String, String> row = BY_ID.get(id);
    if (row == null) {
      return;
    }
    String form = Csv.field(row, "yeast_form");
    if (!form.isEmpty()) {
      builder.yeastForm(YeastForm.valueOf(form));
    }
    String sweetness = Csv.field(row, "sweetness");
    if (!sweetness.isEmpty()) {
      builder.sweetness(FRACTION.amount(Double.parseDouble(sweetness)));
    }
    if (Csv.field(row, "browns_sooner").equals("yes")) {
      builder.brownsSooner();
    }
  }

  /** The id of what usually stands for an ingredient of animals; the first row that fits. */
  static Optional<String> plant(Ingredient ingredient) {
    double fat = 100 * ingredient.composition().fraction(Component.FAT);
    for (Map<String, String> row : PLANTS) {
      String above = Csv.field(row, "fat_above");
      boolean fits =
          ingredient.is(Role.valueOf(Csv.field(row, "role")))
              && (above.isEmpty() || fat > Double.parseDouble(above));
      if (fits) {
        return Optional.of(Csv.field(row, "substitute"));
      }
    }
    return Optional.empty();
  }
}

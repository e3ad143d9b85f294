package org.tourage.ingredient;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.internal.VisibleText;

/**
 * The only class that needs Jackson, an optional dependency. It reads JSON into maps, lists, texts
 * and numbers, and finds the foods in it, one at a time.
 */
final class FoodJson {
  private static final int DEEPEST = 20;
  private static final int LONGEST_TEXT = 1_000_000;
  private static final int LONGEST_NUMBER = 60;
  private static final Set<String> LISTS =
      Set.of("FoundationFoods", "SRLegacyFoods", "BrandedFoods", "SurveyFoods", "foods");

  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNestingDepth(DEEPEST)
                  .maxStringLength(LONGEST_TEXT)
                  .maxNumberLength(LONGEST_NUMBER)
                  .build())
          .build();

  private FoodJson() {}

  /** The foods of a document: one, a list, or a list under the name of its data set. */
  static List<Map<String, Object>> foods(String json) {
    List<Map<String, Object>> foods = new ArrayList<>();
    try (JsonParser parser = FACTORY.createParser(json)) {
      JsonToken first = parser.nextToken();
      if (first == JsonToken.START_ARRAY) {
        list(parser, foods);
      } else if (first == JsonToken.START_OBJECT) {
        top(parser, foods);
      } else {
        throw noFood("neither an object nor a list");
      }
      if (parser.nextToken() != null) {
        throw noFood("more text behind its end");
      }
    } catch (JsonProcessingException e) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a JSON document",
          VisibleText.of(e.getOriginalMessage())
              + " (line "
              + (e.getLocation() == null ? 0 : e.getLocation().getLineNr())
              + ")",
          "give the food as it was downloaded");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return foods;
  }

  private static BakeryException noFood(String given) {
    return new BakeryException(
        Reason.UNREADABLE_TEXT,
        "no food document",
        given,
        "give a food as FoodData Central has it: an object with fdcId, description and"
            + " foodNutrients, or a list of them");
  }

  private static void top(JsonParser parser, List<Map<String, Object>> foods) throws IOException {
    Map<String, Object> rest = new LinkedHashMap<>();
    boolean listed = false;
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String key = parser.currentName();
      JsonToken value = parser.nextToken();
      if (LISTS.contains(key) && value == JsonToken.START_ARRAY) {
        listed = true;
        list(parser, foods);
      } else {
        put(rest, key, value(parser));
      }
    }
    if (!listed) {
      foods.add(rest);
    }
  }

  private static void list(JsonParser parser, List<Map<String, Object>> foods) throws IOException {
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      if (parser.currentToken() != JsonToken.START_OBJECT) {
        throw noFood("a list with something else in it than foods");
      }
      foods.add(object(parser));
    }
  }

  private static Map<String, Object> object(JsonParser parser) throws IOException {
    Map<String, Object> map = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String key = parser.currentName();
      parser.nextToken();
      put(map, key, value(parser));
    }
    return map;
  }

  /** A key without a value is as if it were not there. */
  private static void put(Map<String, Object> map, String key, @Nullable Object value) {
    if (value != null) {
      map.put(key, value);
    }
  }

  private static @Nullable Object value(JsonParser parser) throws IOException {
    return switch (parser.currentToken()) {
      case START_OBJECT -> object(parser);
      case START_ARRAY -> {
        List<Object> list = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
          Object value = value(parser);
          if (value != null) {
            list.add(value);
          }
        }
        yield list;
      }
      case VALUE_STRING -> parser.getText();
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getDecimalValue();
      case VALUE_TRUE -> Boolean.TRUE;
      case VALUE_FALSE -> Boolean.FALSE;
      default -> null;
    };
  }
}

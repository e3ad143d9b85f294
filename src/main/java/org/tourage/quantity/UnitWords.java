package org.tourage.quantity;

import static java.util.Map.entry;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The words for units, kitchens and counted things; keys are lower case without full stops. */
final class UnitWords {
  /** Words that need no kitchen. */
  static final Map<String, BakeryUnit<?>> PLAIN = plainUnits();

  /** Words whose size depends on the kitchen, by their canonical word. */
  static final Map<String, String> CUPS = cupWords();

  /** Words for things that are counted, by their singular. */
  static final Map<String, String> COUNTS = countWords();

  /** Words for kitchens. */
  static final Map<String, CupStandard> KITCHENS =
      Map.ofEntries(
          entry("us", CupStandard.US_CUSTOMARY),
          entry("labelling", CupStandard.US_LABELLING),
          entry("metric", CupStandard.METRIC),
          entry("imperial", CupStandard.IMPERIAL),
          entry("imp", CupStandard.IMPERIAL),
          entry("uk", CupStandard.IMPERIAL));

  private UnitWords() {}

  /** The unit of a cup word in a kitchen, if that kitchen has one size for it. */
  static @Nullable BakeryUnit<?> cup(String word, CupStandard kitchen) {
    return switch (kitchen) {
      case US_CUSTOMARY ->
          switch (word) {
            case "cup" -> BakeryUnits.CUP;
            case "tbsp" -> BakeryUnits.TABLESPOON;
            case "tsp" -> BakeryUnits.TEASPOON;
            case "fl oz" -> BakeryUnits.FLUID_OUNCE;
            case "pint" -> BakeryUnits.PINT;
            case "quart" -> BakeryUnits.QUART;
            default -> BakeryUnits.GALLON;
          };
      case US_LABELLING ->
          switch (word) {
            case "cup" -> BakeryUnits.LABELLING_CUP;
            case "tbsp" -> BakeryUnits.LABELLING_TABLESPOON;
            case "tsp" -> BakeryUnits.LABELLING_TEASPOON;
            case "fl oz" -> BakeryUnits.LABELLING_FLUID_OUNCE;
            default -> null;
          };
      case METRIC ->
          switch (word) {
            case "cup" -> BakeryUnits.METRIC_CUP;
            case "tbsp" -> BakeryUnits.METRIC_TABLESPOON;
            case "tsp" -> BakeryUnits.METRIC_TEASPOON;
            default -> null;
          };
      case IMPERIAL ->
          switch (word) {
            case "cup" -> BakeryUnits.IMPERIAL_CUP;
            case "fl oz" -> BakeryUnits.IMPERIAL_FLUID_OUNCE;
            case "pint" -> BakeryUnits.IMPERIAL_PINT;
            case "quart" -> BakeryUnits.IMPERIAL_QUART;
            case "gallon" -> BakeryUnits.IMPERIAL_GALLON;
            default -> null;
          };
    };
  }

  private static Map<String, BakeryUnit<?>> plainUnits() {
    Map<String, BakeryUnit<?>> map = new HashMap<>();
    words(map, BakeryUnits.GRAM, "g gram grams gramme grammes");
    words(map, BakeryUnits.KILOGRAM, "kg kilogram kilograms kilo kilos");
    words(map, BakeryUnits.MILLIGRAM, "mg milligram milligrams");
    words(map, BakeryUnits.OUNCE, "oz ounce ounces");
    words(map, BakeryUnits.POUND, "lb lbs pound pounds");
    words(map, BakeryUnits.MILLILITRE, "ml millilitre millilitres milliliter milliliters");
    words(map, BakeryUnits.LITRE, "l litre litres liter liters");
    words(map, BakeryUnits.MICROMETRE, "µm μm micrometre micrometres micrometer micrometers");
    words(map, BakeryUnits.MILLIMETRE, "mm millimetre millimetres millimeter millimeters");
    words(map, BakeryUnits.CENTIMETRE, "cm centimetre centimetres centimeter centimeters");
    words(map, BakeryUnits.METRE, "metre metres meter meters");
    words(map, BakeryUnits.INCH, "in inch inches");
    words(map, BakeryUnits.SECOND, "s sec secs second seconds");
    words(map, BakeryUnits.MINUTE, "min mins minute minutes");
    words(map, BakeryUnits.HOUR, "h hr hrs hour hours");
    words(map, BakeryUnits.DAY, "d day days");
    words(map, BakeryUnits.KELVIN, "k kelvin kelvins");
    words(map, BakeryUnits.CELSIUS, "celsius");
    words(map, BakeryUnits.FAHRENHEIT, "fahrenheit");
    words(map, BakeryUnits.PERCENT, "percent");
    words(map, BakeryUnits.JOULE, "j joule joules");
    words(map, BakeryUnits.KILOJOULE, "kj kilojoule kilojoules");
    words(map, BakeryUnits.KILOCALORIE, "kcal kilocalorie kilocalories");
    words(map, BakeryUnits.WATT, "w watt watts");
    for (String degrees : new String[] {"degrees ", "degree ", "deg "}) {
      map.put(degrees + "celsius", BakeryUnits.CELSIUS);
      map.put(degrees + "fahrenheit", BakeryUnits.FAHRENHEIT);
      map.put(degrees + "c", BakeryUnits.CELSIUS);
      map.put(degrees + "f", BakeryUnits.FAHRENHEIT);
    }
    return map;
  }

  private static void words(Map<String, BakeryUnit<?>> map, BakeryUnit<?> unit, String words) {
    for (String word : words.split(" ")) {
      map.put(word, unit);
    }
  }

  private static Map<String, String> cupWords() {
    Map<String, String> map = new LinkedHashMap<>();
    canonical(map, "cup", "cup,cups");
    canonical(map, "tbsp", "tbsp,tbsps,tbs,tablespoon,tablespoons");
    canonical(map, "tsp", "tsp,tsps,teaspoon,teaspoons");
    canonical(map, "fl oz", "fl oz,fluid ounce,fluid ounces,fluid oz");
    canonical(map, "pint", "pint,pints,pt");
    canonical(map, "quart", "quart,quarts,qt");
    canonical(map, "gallon", "gallon,gallons,gal");
    return map;
  }

  private static Map<String, String> countWords() {
    Map<String, String> map = new LinkedHashMap<>();
    canonical(map, "packet", "packet,packets,sachet,sachets,envelope,envelopes");
    canonical(map, "stick", "stick,sticks");
    canonical(map, "cake", "cake,cakes");
    canonical(map, "block", "block,blocks");
    canonical(map, "piece", "piece,pieces");
    canonical(map, "pat", "pat,pats");
    canonical(map, "dash", "dash,dashes");
    canonical(map, "bar", "bar,bars");
    return map;
  }

  private static void canonical(Map<String, String> map, String word, String forms) {
    for (String form : forms.split(",")) {
      map.put(form, word);
    }
  }
}

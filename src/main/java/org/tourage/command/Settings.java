package org.tourage.command;

import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.day.DayTime;
import org.tourage.day.Product;
import org.tourage.fermentation.RateModel;
import org.tourage.lamination.FatCurve;
import org.tourage.makeup.Shape;
import org.tourage.oven.DoughKind;
import org.tourage.oven.ThermalDeath;
import org.tourage.quantity.Amount;
import org.tourage.quantity.AmountFormat;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.CupStandard;
import org.tourage.sheet.SheetView;

/** The table of all settings: what {@code --help} prints is what is read. */
public final class Settings {
  static final Setting<String> TITLE =
      Setting.of("title", SettingText::title, "Lemon buns", "title of the bench sheet")
          .usually("Bench sheet");
  static final Setting<CupStandard> CUPS =
      Setting.of(
              "cups",
              Setting.word(
                  Map.of(
                      "us", CupStandard.US_CUSTOMARY,
                      "labelling", CupStandard.US_LABELLING,
                      "metric", CupStandard.METRIC,
                      "imperial", CupStandard.IMPERIAL)),
              "us",
              "whose cups: us, labelling, metric or imperial")
          .usually("us");
  static final Setting<AmountFormat> UNITS =
      Setting.of(
              "units",
              Setting.word(
                  Map.of(
                      "metric", AmountFormat.metric(),
                      "us", AmountFormat.usCustomary(),
                      "both", AmountFormat.sideBySide())),
              "both",
              "which units are printed: metric, us or both")
          .usually("metric");

  static final Setting<List<SheetView>> SHOW =
      Setting.of(
              "show",
              SettingText::views,
              "label, cost",
              "what is printed: bench, label, cost, shopping, scaling, one or several")
          .usually("bench");
  static final Setting<Currency> CURRENCY =
      Setting.of(
          "currency",
          SettingText::currency,
          "EUR",
          "the currency of the lines under [prices], an ISO 4217 code");

  static final Setting<Integer> PIECES =
      Setting.of("pieces", SettingText::count, "12", "how many pieces");
  static final Setting<Amount<Mass>> PIECE_MASS =
      Setting.of(
          "piece-mass",
          Amounts::mass,
          "85 g",
          "raw mass of one piece; without it the recipe keeps its size");
  static final Setting<Amount<Dimensionless>> BAKE_LOSS =
      Setting.of(
          "bake-loss",
          Amounts::percentage,
          "12 %",
          "share of the raw mass lost in the oven; piece-mass is then the baked mass");
  static final Setting<Amount<Dimensionless>> PROCESS_LOSS =
      Setting.of(
              "process-loss",
              Amounts::percentage,
              "2 %",
              "dough left on bench and tools, trim not counted")
          .usually("0 %");
  static final Setting<Amount<Mass>> FLOUR =
      Setting.of("flour", Amounts::mass, "740 g", "scale to this much flour instead of to pieces");

  static final Setting<String> FLOUR_ON_HAND =
      Setting.of(
          "flour-on-hand",
          SettingText::name,
          "all-purpose flour",
          "use this flour and correct the water");
  static final Setting<String> FLOUR_REPLACED =
      Setting.of(
          "flour-replaced",
          SettingText::name,
          "bread flour",
          "the flour that it replaces; the first if not said");
  static final Setting<String> FAT_ON_HAND =
      Setting.of(
          "fat-on-hand",
          SettingText::name,
          "salted butter",
          "use this fat and correct water and salt");
  static final Setting<String> FAT_REPLACED =
      Setting.of(
          "fat-replaced",
          SettingText::name,
          "unsalted butter",
          "the fat that it replaces; the first if not said");
  static final Setting<String> LIQUID_ON_HAND =
      Setting.of(
          "liquid-on-hand",
          SettingText::name,
          "oat drink",
          "use this liquid and keep water, fat and sugars");
  static final Setting<String> LIQUID_REPLACED =
      Setting.of(
          "liquid-replaced",
          SettingText::name,
          "whole milk",
          "the liquid that it replaces; the first but water if not said");
  static final Setting<Boolean> PLANT_BASED =
      Setting.of(
              "plant-based",
              Setting.word(Map.of("yes", true, "no", false)),
              "yes",
              "yes to replace all dairy, egg and honey; no claim of allergen-free")
          .usually("no");

  static final Setting<Amount<Temperature>> DOUGH_TEMPERATURE =
      Setting.of(
          "dough-temperature",
          SettingText::doughTemperature,
          "24 °C",
          "wanted temperature of the mixed dough; gives the water");
  static final Setting<DoughKind> DOUGH_KIND =
      Setting.of(
          "dough-kind",
          SettingText::doughKind,
          "lean",
          "lean, rich, laminated, puff, rye, batter or gluten-free; by the formula if not said");
  static final Setting<Product.SeenRise> RISE =
      Setting.of(
          "rise",
          SettingText::rise,
          "doubled in 95 min at 23 °C",
          "a rise that was seen and the dough's temperature; else a first guess by the yeast");
  static final Setting<RateModel> RATE_MODEL =
      Setting.of(
              "rate-model",
              SettingText::rate,
              "baker's yeast, gas in dough",
              "how the rate follows the temperature")
          .usually("baker's yeast, gas in dough");
  static final Setting<ThermalDeath> LETHALITY =
      Setting.of(
          "lethality",
          ThermalDeath::named,
          "salmonella in bun dough",
          "a published case to be reckoned with the core");

  static final Setting<FatCurve> FAT_CURVE =
      Setting.of(
          "fat-curve",
          FatCurve::named,
          "palm oil",
          "solid-fat curve of the roll-in fat, for the time on the bench");
  static final Setting<Amount<Length>> PACKET_WIDTH =
      Setting.of("packet-width", Amounts::length, "20 cm", "width of the closed packet");
  static final Setting<Amount<Length>> FAT_THICKNESS =
      Setting.of("fat-thickness", Amounts::length, "10 mm", "to what thickness the fat is shaped");
  static final Setting<Amount<Length>> FOLD_THICKNESS =
      Setting.of(
          "fold-thickness", Amounts::length, "8 mm", "to what thickness is rolled before a fold");
  static final Setting<Amount<Length>> SHEET_THICKNESS =
      Setting.of("sheet-thickness", Amounts::length, "4 mm", "thickness of the final sheet");
  static final Setting<Amount<Length>> SHEET_WIDTH =
      Setting.of("sheet-width", Amounts::length, "25 cm", "width of the final sheet");
  static final Setting<Shape> CUT =
      Setting.of(
          "cut",
          Setting.word(
              Map.of(
                  "triangles", Shape.TRIANGLE,
                  "right-triangles", Shape.RIGHT_TRIANGLE,
                  "rectangles", Shape.RECTANGLE)),
          "triangles",
          "triangles, right-triangles or rectangles");
  static final Setting<Amount<Length>> TRIM =
      Setting.of("trim", Amounts::length, "5 mm", "cut off each edge of the sheet").usually("5 mm");
  static final Setting<Double> SLENDERNESS =
      Setting.of("slenderness", SettingText::ratio, "2 1/4", "wanted height of a piece by its base")
          .usually("2");

  static final Setting<DayTime> START =
      Setting.of("start", DayTime::parse, "14:00", "start of the first step");
  static final Setting<DayTime> READY =
      Setting.of("ready", DayTime::parse, "day 2 09:00", "end of the last step");

  private static final List<Setting<?>> OF_THE_RECIPE =
      List.of(
          TITLE,
          CUPS,
          UNITS,
          SHOW,
          CURRENCY,
          PIECES,
          PIECE_MASS,
          BAKE_LOSS,
          PROCESS_LOSS,
          FLOUR,
          FLOUR_ON_HAND,
          FLOUR_REPLACED,
          FAT_ON_HAND,
          FAT_REPLACED,
          LIQUID_ON_HAND,
          LIQUID_REPLACED,
          PLANT_BASED,
          DOUGH_TEMPERATURE,
          DOUGH_KIND,
          RISE,
          RATE_MODEL,
          LETHALITY,
          FAT_CURVE,
          PACKET_WIDTH,
          FAT_THICKNESS,
          FOLD_THICKNESS,
          SHEET_THICKNESS,
          SHEET_WIDTH,
          CUT,
          TRIM,
          SLENDERNESS,
          START,
          READY);

  private static final List<Setting<?>> ALL =
      Stream.concat(OF_THE_RECIPE.stream(), KitchenSettings.ALL.stream()).toList();

  private Settings() {}

  /**
   * All settings, in the order of the help.
   *
   * @return the settings
   */
  public static List<Setting<?>> all() {
    return ALL;
  }

  static boolean ofTheKitchen(Setting<?> setting) {
    // a kitchen may also say how its people write
    return KitchenSettings.ALL.contains(setting)
        || setting == UNITS
        || setting == CUPS
        || setting == CURRENCY;
  }

  /** The setting of a key. */
  static Setting<?> of(String key) {
    String wanted = key.strip().toLowerCase(Locale.ROOT);
    for (Setting<?> setting : ALL) {
      if (setting.key().equals(wanted)) {
        return setting;
      }
    }
    throw new BakeryException(
        Reason.UNKNOWN_NAME,
        "no such setting",
        "\"" + key + "\"",
        "use one of " + ALL.stream().map(Setting::key).collect(Collectors.joining(", ")));
  }
}

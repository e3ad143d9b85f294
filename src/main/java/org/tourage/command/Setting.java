package org.tourage.command;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a recipe file or the command line can set. */
public enum Setting {
  /** The title of the bench sheet. */
  TITLE("title", "Lemon buns", "title of the bench sheet"),
  /** Which kitchen's cups and spoons the recipe means. */
  CUPS("cups", "us", "whose cups: us, labelling, metric or imperial"),
  /** How many pieces. */
  PIECES("pieces", "12", "how many pieces"),
  /** The raw mass of one piece. */
  PIECE_MASS("piece-mass", "85 g", "raw mass of one piece; without it the recipe keeps its size"),
  /** The share of the dough that does not get into pieces. */
  PROCESS_LOSS("process-loss", "2 %", "dough left on bench and tools, trim not counted"),
  /** The share of the raw mass that the oven takes. */
  BAKE_LOSS(
      "bake-loss", "12 %", "share of the raw mass lost in the oven; piece-mass is then baked"),
  /** How much flour there is. */
  FLOUR("flour", "740 g", "scale to this much flour instead of to pieces"),
  /** The flour that is on hand. */
  FLOUR_ON_HAND("flour-on-hand", "all-purpose flour", "use this flour and correct the water"),
  /** The flour that it replaces. */
  FLOUR_REPLACED(
      "flour-replaced", "bread flour", "the flour that it replaces; the first if not said"),
  /** The fat that is on hand. */
  FAT_ON_HAND("fat-on-hand", "salted butter", "use this fat and correct water and salt"),
  /** The fat that it replaces. */
  FAT_REPLACED(
      "fat-replaced", "unsalted butter", "the fat that it replaces; the first if not said"),
  /** The liquid that is on hand. */
  LIQUID_ON_HAND("liquid-on-hand", "oat drink", "use this liquid and keep water, fat and sugars"),
  /** The liquid that it replaces. */
  LIQUID_REPLACED(
      "liquid-replaced",
      "whole milk",
      "the liquid that it replaces; the first but water if not said"),
  /** Whether all dairy, egg and honey is replaced. */
  PLANT_BASED(
      "plant-based", "no", "yes to replace all dairy, egg and honey; no claim of allergen-free"),
  /** The step of the balance. */
  BALANCE("balance", "1 g", "least step of the balance"),
  /** The wanted temperature of the dough. */
  DOUGH_TEMPERATURE("dough-temperature", "24 °C", "wanted temperature of the mixed dough"),
  /** The temperature of the flour. */
  FLOUR_TEMPERATURE("flour-temperature", "20 °C", "temperature of the flour"),
  /** The temperature of the room. */
  ROOM("room", "22 °C", "temperature of the room"),
  /** The rise by mixing. */
  FRICTION("friction", "8 °C", "rise by mixing, a difference"),
  /** The temperature of the tap water. */
  TAP("tap", "16 °C", "temperature of the tap water"),
  /** A rise that was seen. */
  RISE(
      "rise",
      "doubled in 95 min at 23 °C",
      "a rise that was seen and the dough's temperature; gives the two-day history"),
  /** The rate by temperature. */
  RATE_MODEL("rate-model", "baker's yeast, gas in dough", "how the rate follows the temperature"),
  /** What covers the dough. */
  COVER("cover", "film", "what covers the dough while it rests: none, film, tub or bag"),
  /** The altitude of the kitchen. */
  ALTITUDE("altitude", "0 m", "altitude of the kitchen above the sea"),
  /** How the fat is enclosed. */
  LOCK_IN("lock-in", "half", "half, thirds, envelope or outside"),
  /** The folds. */
  FOLDS("folds", "book, letter", "folds in order: half, letter, book or zigzag N"),
  /** The width of the closed packet. */
  PACKET_WIDTH("packet-width", "20 cm", "width of the closed packet"),
  /** The thickness of the final sheet. */
  SHEET_THICKNESS("sheet-thickness", "4 mm", "thickness of the final sheet"),
  /** The width of the final sheet. */
  SHEET_WIDTH("sheet-width", "25 cm", "width of the final sheet"),
  /** The curve of the roll-in fat. */
  FAT_CURVE(
      "fat-curve", "palm oil", "solid-fat curve of the roll-in fat, for the time on the bench"),
  /** What the bench is made of. */
  BENCH("bench", "wood", "wood, steel, stone or rack"),
  /** The size of the bench. */
  BENCH_SIZE("bench-size", "150 x 60 cm", "length and width of the bench or the sheeter's belt"),
  /** The temperature of the refrigerator. */
  REFRIGERATOR("refrigerator", "4 °C", "temperature of the refrigerator"),
  /** The outline of the pieces. */
  CUT("cut", "triangles", "triangles, right-triangles or rectangles"),
  /** What is cut off each edge. */
  TRIM("trim", "5 mm", "cut off each edge of the sheet"),
  /** Height by base of a piece. */
  SLENDERNESS("slenderness", "2", "wanted height of a piece by its base"),
  /** The oven. */
  OVEN(
      "oven",
      "400 °F 10 min, 350 °F 14 min",
      "set points and times in order, each perhaps with fan, steam or vent open"),
  /** What kind of dough it is for the core. */
  DOUGH_KIND("dough-kind", "rich", "lean or rich: the core at which a piece is done"),
  /** A published case of thermal death. */
  LETHALITY(
      "lethality", "salmonella in bun dough", "a published case to be reckoned with the core"),
  /** When the work starts. */
  START("start", "14:00", "start of the first task"),
  /** When the pastry is to be ready. */
  READY("ready", "day 2 09:00", "end of the last task; wins over start"),
  /** Which units are printed. */
  UNITS("units", "metric", "metric, us or both");

  private final String key;
  private final String example;
  private final String help;

  Setting(String key, String example, String help) {
    this.key = key;
    this.example = example;
    this.help = help;
  }

  /**
   * The word that sets it, in a file and, after two hyphens, on the command line.
   *
   * @return for example {@code piece-mass}
   */
  public String key() {
    return key;
  }

  /**
   * An example of a value.
   *
   * @return the example
   */
  public String example() {
    return example;
  }

  /**
   * What it does.
   *
   * @return one line
   */
  public String help() {
    return help;
  }

  static Optional<Setting> find(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> s.key.equals(wanted)).findFirst();
  }
}

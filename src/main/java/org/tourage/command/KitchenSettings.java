package org.tourage.command;

import java.util.List;
import java.util.Map;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import org.tourage.day.Balance;
import org.tourage.day.KitchenOven;
import org.tourage.day.Warming;
import org.tourage.fermentation.Cover;
import org.tourage.lamination.Bench;
import org.tourage.lamination.Rollers;
import org.tourage.quantity.Amount;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.Extent;
import org.tourage.quantity.TemperatureDifference;

/** The settings of a kitchen: what may stand in a kitchen file. */
final class KitchenSettings {
  static final Setting<String> KITCHEN =
      Setting.of("kitchen-name", SettingText::title, "Kestrel Lane", "name of the kitchen")
          .usually("a usual kitchen");
  static final Setting<Amount<Temperature>> ROOM =
      Setting.of("room", Amounts::temperature, "21 °C", "temperature of the room").usually("22 °C");
  static final Setting<Amount<Temperature>> TAP =
      Setting.of("tap", Amounts::temperature, "12 °C", "temperature of the tap water")
          .usually("16 °C");
  static final Setting<Amount<Temperature>> FLOUR_TEMPERATURE =
      Setting.of(
          "flour-temperature",
          Amounts::temperature,
          "20 °C",
          "temperature of the flour; the room's if not said");
  static final Setting<Amount<Temperature>> REFRIGERATOR =
      Setting.of("refrigerator", Amounts::temperature, "4 °C", "temperature of the refrigerator")
          .usually("4 °C");
  static final Setting<Amount<Temperature>> FREEZER =
      Setting.of("freezer", Amounts::temperature, "-18 °C", "temperature of the freezer")
          .usually("-18 °C");
  static final Setting<Amount<Temperature>> PROOFER =
      Setting.of("proofer", Amounts::temperature, "26 °C", "temperature of the proofing cabinet")
          .usually("27 °C");
  static final Setting<Amount<Length>> ALTITUDE =
      Setting.of("altitude", Amounts::length, "1600 m", "altitude of the kitchen above the sea")
          .usually("0 m");
  static final Setting<Balance> BALANCE =
      Setting.of("balance", SettingText::balance, "1 g up to 5 kg", "least step of the balance")
          .usually("1 g");
  static final Setting<Balance> FINE_BALANCE =
      Setting.of(
          "fine-balance",
          SettingText::balance,
          "0.01 g up to 200 g",
          "a balance for small amounts");
  static final Setting<Bench> BENCH =
      Setting.of(
              "bench",
              Setting.word(
                  Map.of(
                      "wood", Bench.WOOD,
                      "steel", Bench.STEEL,
                      "stone", Bench.STONE,
                      "rack", Bench.RACK)),
              "steel",
              "wood, steel, stone or rack")
          .usually("wood");
  static final Setting<Extent> BENCH_SIZE =
      Setting.of(
          "bench-size",
          Extent::parse,
          "150 x 60 cm",
          "length and width of the bench or the sheeter's belt");
  static final Setting<Amount<Length>> TUB =
      Setting.of("tub", Amounts::length, "30 cm", "diameter of the tub for a rising dough");
  static final Setting<Cover> COVER =
      Setting.of(
              "cover",
              SettingText.COVER,
              "tub",
              "what covers a resting dough: none, film, tub or bag")
          .usually("film");
  static final Setting<TemperatureDifference> MIXER_RISE =
      Setting.of(
              "mixer-rise",
              SettingText::difference,
              "7 K",
              "how much the mixer warms a dough, a difference")
          .usually("7 K");
  static final Setting<TemperatureDifference> FRICTION =
      Setting.of(
          "friction",
          SettingText::difference,
          "22 K",
          "friction number of the factor rule, in place of mixer-rise");
  static final Setting<Warming> PAST_MIX =
      Setting.of(
          "past-mix",
          SettingText::pastMix,
          "flour 20 °C, room 22 °C, water 14 °C, dough 25 °C",
          "a mix of another day, in place of mixer-rise");
  static final Setting<Rollers> SHEETER =
      Setting.of(
          "sheeter",
          SettingText::sheeter,
          "1 mm to 45 mm, belt 60 cm, 30 % a pass",
          "least gap, opening, belt and largest reduction a pass; else a pin");
  static final Setting<KitchenOven> OVEN =
      Setting.of(
              "oven",
              SettingText::oven,
              "up to 300 °C, 4 trays of 60 x 40 cm, stone",
              "highest set point, trays, stone floor or not")
          .usually("up to 275 °C, 2 trays of 45 x 35 cm");

  static final List<Setting<?>> ALL =
      List.of(
          KITCHEN,
          ROOM,
          TAP,
          FLOUR_TEMPERATURE,
          REFRIGERATOR,
          FREEZER,
          PROOFER,
          ALTITUDE,
          BALANCE,
          FINE_BALANCE,
          BENCH,
          BENCH_SIZE,
          TUB,
          COVER,
          MIXER_RISE,
          FRICTION,
          PAST_MIX,
          SHEETER,
          OVEN);

  private KitchenSettings() {}
}

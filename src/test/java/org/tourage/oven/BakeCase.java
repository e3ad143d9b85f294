package org.tourage.oven;

import static org.tourage.quantity.Amounts.celsius;
import static org.tourage.quantity.Amounts.fraction;
import static org.tourage.quantity.Amounts.metres;
import static org.tourage.quantity.Amounts.millimetres;
import static org.tourage.quantity.Amounts.minutes;
import static org.tourage.quantity.Amounts.seconds;
import static org.tourage.quantity.BakeryUnits.KILOGRAM_PER_CUBIC_METRE;

import java.util.stream.Stream;
import org.tourage.physics.ChoiOkos1986;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;
import org.tourage.quantity.TemperatureDifference;
import org.tourage.reference.Checks.Row;

/** A bake of a check file: the gas follows from the mass and the shape. */
final class BakeCase {
  private BakeCase() {}

  static Bake bake(Row row) {
    return Bake.of(piece(row), oven(row), profile(row), DoughKind.valueOf(row.text("dough")));
  }

  static BakePiece piece(Row row) {
    Constituents dough =
        new Constituents(
            row.number("water") / 100,
            row.number("protein") / 100,
            row.number("fat") / 100,
            row.number("carbohydrate") / 100,
            row.number("fibre") / 100,
            row.number("ash") / 100);
    double start = row.number("start");
    double density = ChoiOkos1986.density(dough, celsius(start)).in(KILOGRAM_PER_CUBIC_METRE) / 1e6;
    double gas = 1 - row.number("grams") / (density * cubicMillimetres(row) / 1000) / 1000;
    BakePiece piece =
        BakePiece.of(solid(row), dough)
            .withPorosity(fraction(Math.max(0, gas)))
            .from(celsius(start))
            .on(
                switch (row.text("seat")) {
                  case "GRID" -> Seat.GRID;
                  case "SHEET" -> Seat.SHEET;
                  case "STONE" -> Seat.STONE;
                  case "DARK" -> Seat.TIN.withEmissivity(0.8);
                  default -> Seat.TIN;
                })
            .boiledFor(seconds(row.number("boil_s")))
            .atAltitude(metres(row.number("altitude")));
    piece = piece.on(piece.seat().withNeighbours(fraction(row.number("neighbours"))));
    return row.number("spring") == 0 ? piece : piece.withSpring(row.number("spring"));
  }

  private static Solid solid(Row row) {
    double a = row.number("a");
    return switch (row.text("shape")) {
      case "slab" -> Solid.slab(millimetres(a));
      case "roll" -> Solid.roll(millimetres(a));
      case "ball" -> Solid.ball(millimetres(a));
      case "tub" -> Solid.tub(millimetres(a), millimetres(row.number("b")));
      default ->
          Solid.box(millimetres(a), millimetres(row.number("b")), millimetres(row.number("c")));
    };
  }

  /** A disc of 30 cm for a slab of pizza, a ring of 65 mm for a roll: what the rows say. */
  private static double cubicMillimetres(Row row) {
    double a = row.number("a");
    return switch (row.text("shape")) {
      case "slab" -> row.text("style").contains("pizza") ? Math.PI * 150 * 150 * a : 1;
      case "roll" -> Math.PI * a * a / 4 * Math.PI * 65;
      case "ball" -> Math.PI * a * a * a / 6;
      case "tub" -> Math.PI * a * a / 4 * row.number("b");
      default -> a * row.number("b") * row.number("c");
    };
  }

  static OvenModel oven(Row row) {
    return switch (row.text("oven")) {
      case "DECK" -> OvenModel.DECK;
      // an oven of a trial: held at its set point, no fall at the door, the fan of a rack oven
      case "TRIAL" ->
          OvenModel.HOUSEHOLD
              .withDoorDrop(TemperatureDifference.ofCelsiusDegrees(0))
              .withConvection(7, 20);
      default -> OvenModel.HOUSEHOLD;
    };
  }

  /** {@code 245/8/steam;245/14/vent}: °C, minutes, how. */
  static OvenProfile profile(Row row) {
    return new OvenProfile(Stream.of(row.text("steps").split(";")).map(BakeCase::step).toList());
  }

  private static OvenProfile.Step step(String text) {
    String[] part = text.split("/");
    OvenProfile.Step step =
        new OvenProfile.Step(
            celsius(Double.parseDouble(part[0])), minutes(Double.parseDouble(part[1])));
    return switch (part[2]) {
      case "steam" -> step.withSteam();
      case "vent" -> step.vented();
      case "fan" -> step.withFan();
      default -> step;
    };
  }
}

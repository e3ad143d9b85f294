package org.tourage.fermentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.physics.Constituents;
import org.tourage.physics.Solid;

/** Figures of the rise to the last bit; they were the same on JDK 17 and on JDK 25. */
class SameBitsTest {
  private static final Constituents DOUGH = new Constituents(0.40, 0.07, 0.05, 0.44, 0.02, 0.02);

  static List<String> bits() {
    DoughGas gas =
        DoughGas.of(DOUGH, celsius(24)).atAltitude(metres(1609)).withSaltInWater(percent(3));
    Rise rise = Rise.observed(gas, 2, minutes(95), celsius(23));
    List<Double> values = new ArrayList<>();
    for (DoughBody body :
        new DoughBody[] {
          DoughBody.of(Solid.slab(millimetres(25)), DOUGH).covered(Cover.AIR_GAP),
          DoughBody.ballOf(kilograms(0.9), DOUGH),
          DoughBody.tubOf(kilograms(2), DOUGH),
          DoughBody.of(Solid.box(centimetres(20), centimetres(10), centimetres(8)), DOUGH)
        }) {
      RiseHistory history =
          RiseHistory.start(rise, celsius(24))
              .then("rest", body, celsius(22), minutes(30))
              .then("night", body, celsius(4), hours(11));
      values.add(history.end().growth());
      values.add(history.end().core().getValue().doubleValue());
      values.add(history.coldRange().quick());
      values.add(history.gas().dissolved());
    }
    values.add(Arrhenius.observed(celsius(20), celsius(28), 1.8).rate(4));
    values.add(Q10Rule.observed(celsius(20), celsius(28), 1.8).rate(4));
    return values.stream().map(Double::toHexString).toList();
  }

  public static void main(String[] arguments) {
    bits().forEach(System.out::println);
  }

  @Test
  void theFiguresOfTheRiseAreTheSameBitsOnEveryMachine() {
    assertThat(bits())
        .containsExactly(
            "0x1.7837f3c706addp1",
            "0x1.1b0bc33d2f852p2",
            "0x1.8f80ca3ae700cp1",
            "0x1.1e1d18e82f8fap-6",
            "0x1.7368aed49eb17p1",
            "0x1.20e49ec16a17p2",
            "0x1.8b1152014fab3p1",
            "0x1.1e212c76b970dp-6",
            "0x1.9723c33f2c042p1",
            "0x1.47e66793d2e9ap2",
            "0x1.ac3f65ae6e628p1",
            "0x1.1bab3f9c5c5efp-6",
            "0x1.757d32aa7c5f6p1",
            "0x1.29247741566cdp2",
            "0x1.8d16203b1510cp1",
            "0x1.1dd218268fa85p-6",
            "0x1.1d7589aa60283p-2",
            "0x1.3c0ca4587e6b6p-2");
  }
}

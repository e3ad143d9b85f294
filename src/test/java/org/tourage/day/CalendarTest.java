package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.tourage.quantity.Amounts.*;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;
import org.tourage.advice.Problem;
import org.tourage.formula.HouseholdRecipe;

class CalendarTest {
  private static final Timetable NIGHT =
      Timetable.startingAt(
          DayTime.parse("22:00"),
          List.of(Timetable.Task.of("mix", minutes(30)), Timetable.Task.of("retard", hours(9))));
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @Test
  void aNightInWhichTheClocksChangeMakesNoStepShorter() {
    // 29 March 2026, 2:00 becomes 3:00
    List<Timetable.Dated> spring = NIGHT.on(LocalDate.of(2026, 3, 28), BERLIN);
    assertThat(spring.get(0).start()).hasToString("2026-03-28T22:00+01:00[Europe/Berlin]");
    assertThat(spring.get(1).duration()).isEqualTo(Duration.ofHours(9));
    assertThat(spring.get(1).end()).hasToString("2026-03-29T08:30+02:00[Europe/Berlin]");
    List<Timetable.Dated> ready = NIGHT.endingOn(LocalDate.of(2026, 3, 28), BERLIN);
    assertThat(ready.get(1).end()).hasToString("2026-03-29T07:30+02:00[Europe/Berlin]");
    assertThat(ready.get(0).start()).hasToString("2026-03-28T21:00+01:00[Europe/Berlin]");
  }

  @Test
  void anOrdinaryNightIsAsItIsWritten() {
    assertThat(NIGHT.on(LocalDate.of(2026, 6, 1), BERLIN))
        .isEqualTo(NIGHT.endingOn(LocalDate.of(2026, 6, 1), BERLIN))
        .extracting(d -> d.start().toLocalTime().toString())
        .containsExactly("22:00", "22:30");
  }

  @Test
  void theProblemsOfARecipeAreAListWithLineAndPlace() {
    BakeryException wrong =
        catchThrowableOfType(
            BakeryException.class,
            () -> HouseholdRecipe.of("x", "500 g bread flour", "300 g moonwater", "salt"));
    assertThat(wrong.problems()).extracting(Problem::line).containsExactly(2, 3);
    assertThat(wrong.problems().get(0).text()).isEqualTo("300 g moonwater");
    assertThat(wrong.problems().get(0).offset()).isEqualTo("300 g ".length());
    assertThat(wrong.problems().get(1).offset()).isZero();
  }
}

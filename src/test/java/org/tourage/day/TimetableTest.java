package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.tourage.quantity.Amounts.*;

import java.time.LocalTime;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.tourage.advice.BakeryException;

class TimetableTest {
  private static final List<Timetable.Task> TASKS =
      List.of(
          Timetable.Task.of("mix", minutes(20)),
          Timetable.Task.of("retard", hours(12)).until("grown by half"));

  @Test
  void tasksFollowOneAnotherAcrossMidnight() {
    Timetable table = Timetable.startingAt(DayTime.parse("20:00"), TASKS);
    assertThat(table)
        .hasToString(
            "day 1 20:00  mix (20 min)\nday 1 20:20  retard (12 h): grown by half\nday 2 08:20  done");
    assertThat(Timetable.endingAt(DayTime.parse("Day 2 8:20"), TASKS)).isEqualTo(table);
    assertThat(table.start()).isEqualTo(new DayTime(1, LocalTime.of(20, 0)));
    assertThat(table.end()).isGreaterThan(table.start());
  }

  @Property
  void backwardFromTheEndAndForwardFromTheStartAgree(
      @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 1, max = 900) Integer> durations) {
    List<Timetable.Task> tasks =
        durations.stream().map(d -> Timetable.Task.of("task", minutes(d))).toList();
    Timetable backward = Timetable.endingAt(DayTime.parse("day 3 06:00"), tasks);
    assertThat(Timetable.startingAt(backward.start(), tasks)).isEqualTo(backward);
    assertThat(backward.end()).isEqualTo(DayTime.parse("day 3 06:00"));
    assertThat(backward.start().plusMinutes(durations.stream().mapToLong(d -> d).sum()))
        .isEqualTo(backward.end());
  }

  @Test
  void wrongTimesAreRefused() {
    for (String wrong : new String[] {"25:00", "8", "8:5", "noon", "day x 8:00", "12:60"}) {
      assertThatThrownBy(() -> DayTime.parse(wrong))
          .as(wrong)
          .isInstanceOf(BakeryException.class)
          .hasMessageContaining("\"" + wrong + "\"");
    }
    assertThatThrownBy(() -> new DayTime(1, LocalTime.of(1, 2, 3))).hasMessageContaining("seconds");
    assertThatThrownBy(() -> Timetable.Task.of("x", seconds(10)))
        .hasMessageContaining("takes time");
    assertThatThrownBy(() -> new Timetable(List.of())).hasMessageContaining("needs tasks");
    Timetable.Entry first =
        new Timetable.Entry(DayTime.parse("8:00"), DayTime.parse("9:00"), TASKS.get(0), false);
    assertThatThrownBy(() -> new Timetable(List.of(first, first))).hasMessageContaining("overlap");
    assertThat(DayTime.parse("00:10").plusMinutes(-20)).hasToString("day 0 23:50");
  }

  @Test
  void aTaskBesideTheOthersEndsWhenItIsNeededAndMovesNothing() {
    Timetable table = Timetable.startingAt(DayTime.parse("8:00"), TASKS);
    Timetable with =
        table.beside(Timetable.Task.of("heat the oven", minutes(30)), DayTime.parse("9:00"));
    assertThat(with.entries()).hasSize(3);
    assertThat(with.entries().get(2))
        .hasToString("day 1 08:30  heat the oven (30 min)")
        .extracting(Timetable.Entry::beside)
        .isEqualTo(true);
    assertThat(with.start()).isEqualTo(table.start());
    assertThat(with.end()).isEqualTo(table.end());
  }

  @Test
  void shortTasksDoNotAddUpToAnError() {
    List<Timetable.Task> pizzas =
        java.util.stream.IntStream.range(0, 12)
            .mapToObj(i -> Timetable.Task.of("bake " + i, seconds(90)))
            .toList();
    assertThat(Timetable.startingAt(DayTime.parse("18:00"), pizzas).end())
        .isEqualTo(DayTime.parse("18:18"));
  }
}

package org.tourage.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class AdviceTest {
  @Test
  void readsAsOneLine() {
    assertThat(Advice.of("SALT_HIGH", "salt is 4 %", "Use less"))
        .hasToString("Warning: salt is 4 %. Use less. [common practice]");
  }

  @Test
  void severityAndSourceAreThoseOfTheTable() {
    assertThat(Advice.of("LYE", "a", "b").severity()).isEqualTo(Severity.SAFETY);
    assertThat(Advice.of("RYE", "a", "b").severity()).isEqualTo(Severity.NOTE);
    assertThat(Advice.of("FAT_SOFT", "a", "b", "a curve").source()).isEqualTo("a curve");
    assertThatThrownBy(() -> new Advice(Severity.NOTE, "LYE", "a", "b", "common practice"))
        .isInstanceOf(BakeryException.class)
        .hasMessage("the severity of LYE is not that of the table: NOTE; the table says: SAFETY");
    assertThatThrownBy(() -> Advice.of("LYE", "a", "b", "hearsay"))
        .isInstanceOf(BakeryException.class)
        .hasMessage(
            "the source of LYE is not that of the table: hearsay; the table says: common practice");
    assertThatThrownBy(() -> Advice.of("FAT_SOFT", "a", "b"))
        .isInstanceOf(BakeryException.class)
        .hasMessageContaining("that of the fat's curve");
  }

  @Test
  void refusesAnUnknownCode() {
    assertThatThrownBy(() -> Advice.of("X", "a", "b"))
        .isInstanceOf(BakeryException.class)
        .hasMessage("no advice has that code: \"X\"; use a code of the table of advice");
  }

  @Test
  @SuppressWarnings("NullAway") // nulls are what is tested
  void refusesNullByName() {
    assertThatThrownBy(() -> Advice.of("LYE", null, "b"))
        .isInstanceOf(NullPointerException.class)
        .hasMessage("text");
  }

  @Test
  void workingKeepsItsOwnCopyAndReadsLineByLine() {
    List<WorkedLine> lines = new ArrayList<>(List.of(new WorkedLine("a", "b", "c", "d")));
    Working working = new Working(lines);
    lines.clear();
    assertThat(working.lines()).hasSize(1);
    assertThat(working).hasToString("a = b = c   [d]");
    assertThat(working.then(working).lines()).hasSize(2);
  }

  @Test
  void theExceptionSaysThreeThings() {
    BakeryException e =
        new BakeryException(BakeryException.Reason.OUT_OF_RANGE, "too hot", "900 °C", "give less");
    assertThat(e).hasMessage("too hot: 900 °C; give less");
    assertThat(e.given()).isEqualTo("900 °C");
    assertThat(e.expected()).isEqualTo("give less");
    assertThat(e.reason()).isEqualTo(BakeryException.Reason.OUT_OF_RANGE);
  }
}

package org.tourage.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class AdviceTest {
  @Test
  void readsAsOneLine() {
    assertThat(Advice.warning("X", "salt is 4 %", "Use less", Advice.COMMON_PRACTICE))
        .hasToString("Warning: salt is 4 %. Use less. [common practice]");
    assertThat(Advice.note("X", "a", "b", "c").severity()).isEqualTo(Severity.NOTE);
    assertThat(Advice.safety("X", "a", "b", "c").severity()).isEqualTo(Severity.SAFETY);
  }

  @Test
  @SuppressWarnings("NullAway") // nulls are what is tested
  void refusesNullByName() {
    assertThatThrownBy(() -> Advice.note("X", null, "b", "c"))
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

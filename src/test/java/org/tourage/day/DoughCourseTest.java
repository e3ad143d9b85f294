package org.tourage.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.tourage.quantity.Amounts.*;

import org.junit.jupiter.api.Test;
import org.tourage.formula.Formula;

class DoughCourseTest {
  @Test
  void theBodiesOfADayAreWorkedOnce() {
    Formula lean =
        Formula.byPercent(
            "Rolls", f -> f.line("bread flour", percent(100)).line("water", percent(60)));
    Procedure steps = Procedure.of(Step.mix(minutes(9)), Step.rest(minutes(20)));
    Order order = Order.pieces(Product.of(lean, steps), 10, grams(80));
    Scaled scaled = new Scaling(Kitchen.USUAL, order).scale(lean.forFlour(grams(500)));
    DoughCourse course = new DoughCourse(Kitchen.USUAL, steps, scaled);
    assertThat(course.legs()).hasSize(1).isSameAs(course.legs());
  }
}

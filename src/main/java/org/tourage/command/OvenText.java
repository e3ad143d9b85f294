package org.tourage.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tourage.advice.BakeryException;
import org.tourage.advice.BakeryException.Reason;
import org.tourage.oven.OvenProfile;
import org.tourage.quantity.Amounts;
import org.tourage.quantity.CupStandard;
import org.tourage.quantity.HouseholdAmount;
import org.tourage.quantity.Kind;

/**
 * Reads the steps of an oven: {@code 240 °C 15 min with steam, 210 °C 20 min vent open, 200 °C 10
 * min fan}. Instead of a time alone, {@code at most 40 min to core 96 °C} or {@code to loss 12 %}.
 */
final class OvenText {
  private static final Pattern END =
      Pattern.compile("(.*?)\\s+to\\s+(core|loss)\\s+(.+)", Pattern.CASE_INSENSITIVE);
  private static final Pattern WORDS =
      Pattern.compile("\\b(with|and|fan|steam|vent|open|at most|for)\\b");

  private OvenText() {}

  static OvenProfile profile(String text) {
    List<OvenProfile.Step> steps = new ArrayList<>();
    for (String part : text.split(",")) {
      steps.add(step(part.strip()));
    }
    return new OvenProfile(steps);
  }

  private static OvenProfile.Step step(String text) {
    HouseholdAmount setPoint = HouseholdAmount.parseFront(text, CupStandard.US_CUSTOMARY);
    if (setPoint.kind() != Kind.TEMPERATURE || setPoint.rest().isEmpty()) {
      throw new BakeryException(
          Reason.UNREADABLE_TEXT,
          "not a step of an oven",
          "\"" + text + "\"",
          "write it like 220 °C 12 min with steam, 200 °C 10 min");
    }
    String rest = setPoint.rest().toLowerCase(Locale.ROOT);
    Matcher end = END.matcher(rest);
    boolean ends = end.matches();
    String front = ends ? end.group(1) : rest;
    OvenProfile.Step step =
        new OvenProfile.Step(
            Amounts.temperature(setPoint.text()),
            Amounts.time(WORDS.matcher(front).replaceAll(" ").replaceAll("\\s+", " ").strip()));
    if (front.matches(".*\\bfan\\b.*")) {
      step = step.withFan();
    }
    if (front.matches(".*\\bsteam\\b.*")) {
      step = step.withSteam();
    } else if (front.matches(".*\\bvent\\b.*")) {
      step = step.vented();
    }
    if (ends) {
      step =
          end.group(2).equalsIgnoreCase("core")
              ? step.untilCore(Amounts.temperature(end.group(3)))
              : step.untilLoss(Amounts.percentage(end.group(3)));
    }
    return step;
  }
}

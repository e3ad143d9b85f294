package org.tourage.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tourage.day.BakeDay;
import org.tourage.formula.HouseholdRecipe;

/** What docs/recipe-files.md writes down can be read by the command. */
class RecipeFilesDocumentTest {
  private static final Pattern BLOCK = Pattern.compile("```text\\n(.*?)```", Pattern.DOTALL);

  private static String page() {
    try {
      return Files.readString(Path.of("docs", "recipe-files.md"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> blocks() {
    List<String> blocks = new ArrayList<>();
    Matcher matcher = BLOCK.matcher(page());
    while (matcher.find()) {
      blocks.add(matcher.group(1));
    }
    return blocks;
  }

  private static String blockWith(String words) {
    return blocks().stream().filter(b -> b.contains(words)).findFirst().orElseThrow();
  }

  /** The lines of the blocks about steps and the oven. */
  static Stream<String> steps() {
    String page = page();
    String part = page.substring(page.indexOf("## Steps"), page.indexOf("## A kitchen file"));
    return blocks().stream().filter(part::contains).flatMap(String::lines);
  }

  @Test
  void theRecipeAndTheKitchenOfThePageAreWorked() {
    RecipeFile file =
        RecipeFile.parse("page.txt", blockWith("title: Class rolls"))
            .withKitchen("page.kitchen", blockWith("kitchen-name:"));

    BakeDay day = BakeDay.of(file.plan());

    assertThat(day.pieces()).isEqualTo(18);
    assertThat(day.bake().isThere()).isTrue();
    assertThat(day.rise().isThere()).isTrue();
  }

  @Test
  void theRecipeLinesOfThePageAreRead() {
    String lines = blockWith("2 sticks unsalted butter");

    assertThat(HouseholdRecipe.of("lines", lines.lines().toArray(String[]::new)).items())
        .hasSize((int) lines.lines().count());
  }

  @Test
  void theOwnIngredientOfThePageIsRead() {
    String text =
        blockWith("[ingredient Brook mill flour]")
            + "[dough]\n2 cups mill flour\n1/2 cup water\n[steps]\nmix: 10 min\n";

    assertThat(BakeDay.of(RecipeFile.parse("own.txt", text).plan()).batch().flour().toString())
        .isEqualTo("244 g");
  }

  @Test
  void theChainOfThePageIsRead() {
    String text = blockWith("all of First") + "300 g bread flour\n[steps]\nmix: 10 min\n";

    assertThat(BakeDay.of(RecipeFile.parse("chain.txt", text).plan()).batch().flour().toString())
        .isEqualTo("540 g");
  }

  @ParameterizedTest
  @MethodSource("steps")
  void everyStepOfThePageIsRead(String line) {
    assertThat(StepText.parse(line).name()).isNotBlank();
  }

  @Test
  void everySettingThatThePageNamesExists() {
    Matcher matcher = Pattern.compile("`([a-z]+-[a-z-]+)(: [^`]*)?`").matcher(page());
    List<String> named = new ArrayList<>();
    while (matcher.find()) {
      named.add(matcher.group(1));
    }

    assertThat(named).hasSizeGreaterThan(15);
    assertThat(named)
        .filteredOn(n -> !n.equals("right-triangles") && !n.equals("roll-in"))
        .allSatisfy(n -> assertThat(Settings.of(n).key()).isEqualTo(n));
  }
}

package org.tourage.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a first result loads, seen in a new virtual machine on the class path. */
class LoadingTest {
  private static String classesLoaded(String... args) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String classPath =
        String.join(
            File.pathSeparator,
            "target/classes",
            "target/test-classes",
            Files.readString(Path.of("target/runtime-class-path")).strip());
    ProcessBuilder builder =
        new ProcessBuilder(
            java, "-Xlog:class+load", "-cp", classPath, "org.tourage.benchmark.ColdStart");
    builder.command().addAll(List.of(args));
    Process process = builder.redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return out;
  }

  @Test
  void anAmountLoadsNeitherTheCatalogueNorTheUnitsImplementation() throws Exception {
    assertThat(classesLoaded("amount"))
        .contains("500 g")
        .contains("org.tourage.quantity.Amount ")
        .doesNotContain("org.tourage.ingredient")
        .doesNotContain("tech.units");
  }

  @Test
  void aFormulaByNameLoadsTheCatalogueButNotTheUnitsImplementation() throws Exception {
    assertThat(classesLoaded())
        .contains("total dough")
        .contains("org.tourage.ingredient.Catalogue ")
        .doesNotContain("tech.units");
  }
}

package org.tourage.house;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program that embeds the library, compiled without a warning and run as its users run it. */
class ConsumerTest {
  private static final Path SOURCE = Path.of("src/it/consumer");
  private static final Path LIBRARY = Path.of("target/classes");

  @SuppressWarnings("NullAway.Init") // by the test engine
  @TempDir
  Path out;

  /** The library and what it needs at run time, and nothing else. */
  private static String path() throws IOException {
    return Stream.concat(
            Stream.of(LIBRARY.toAbsolutePath().toString()),
            Stream.of(
                    "javax.measure.Unit",
                    "tech.units.indriya.AbstractUnit",
                    "tech.uom.lib.common.function.Nameable",
                    "jakarta.inject.Inject")
                .map(ConsumerTest::jarOf))
        .collect(Collectors.joining(File.pathSeparator));
  }

  private static String jarOf(String type) {
    try {
      return Path.of(
              Class.forName(type, false, Unit.class.getClassLoader())
                  .getProtectionDomain()
                  .getCodeSource()
                  .getLocation()
                  .toURI())
          .toString();
    } catch (ClassNotFoundException | URISyntaxException e) {
      throw new IllegalStateException(type, e);
    }
  }

  private void compile(List<String> options, String... files) throws Exception {
    List<String> arguments = new ArrayList<>(List.of("--release", "17", "-Xlint:all", "-Werror"));
    arguments.addAll(options);
    arguments.addAll(List.of("-d", out.toString()));
    for (String file : files) {
      arguments.add(SOURCE.resolve(file).toString());
    }
    assertThat(tool("javac", arguments)).isEmpty();
  }

  private static String run(List<String> options) throws Exception {
    List<String> arguments =
        new ArrayList<>(List.of("-Dstdout.encoding=UTF-8", "-Dfile.encoding=UTF-8"));
    arguments.addAll(options);
    return tool("java", arguments);
  }

  private static String tool(String name, List<String> arguments) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", name).toString());
    command.addAll(arguments);
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().remove("CLASSPATH");
    builder.environment().remove("JDK_JAVA_OPTIONS");
    builder.environment().remove("JAVA_TOOL_OPTIONS");
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  @Test
  void anEmbeddingProgramGetsTheSameFromEightThreadsOnEitherPath() throws Exception {
    compile(List.of("-classpath", path()), "shop/DayExport.java");
    String classes = run(List.of("-cp", out + File.pathSeparator + path(), "shop.DayExport"));
    assertThat(classes).contains("equal 16 of 16", "refused MISSING", "fatLayers=12");
    compile(List.of("--module-path", path()), "module-info.java", "shop/DayExport.java");
    String modules =
        run(
            List.of(
                "--module-path",
                out + File.pathSeparator + path(),
                "--module",
                "shop/shop.DayExport"));
    assertThat(modules).isEqualTo(classes);
  }
}

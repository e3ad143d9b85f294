package org.tourage.documentation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Runs every code block of the documents. A {@code java} block runs in JShell through the launcher;
 * a line that ends in {@code // → text} must print something that contains the text. A {@code text}
 * block must be printed by the blocks before it. A {@code sh} block runs in a copy of the project,
 * but for the test command, which is what runs this test. An {@code xml} block must name this
 * project.
 */
class DocumentationTest {
  private static final Pattern BLOCK = Pattern.compile("```(\\w*)\\n(.*?)```", Pattern.DOTALL);
  private static final Pattern CHECKED = Pattern.compile("^(.*?);?\\s*// → (.*)$");
  private static final String TEST_COMMAND = "mvn -B verify";
  private static final String CHECK =
      "void check(Object value, String expected) { System.out.println(String.valueOf(value)"
          + ".contains(expected) ? \"CHECK-HOLDS\" : \"CHECK-FAILS: \" + value + \" lacks \" +"
          + " expected); }\n";

  record Block(String language, String text) {}

  static Stream<Path> documents() throws IOException {
    List<Path> documents = new ArrayList<>();
    try (Stream<Path> docs = Files.list(Path.of("docs"))) {
      docs.filter(p -> p.toString().endsWith(".md")).sorted().forEach(documents::add);
    }
    for (String name :
        new String[] {"README.md", "DEVELOPERS.md", "CHANGELOG.md", "reference-data/README.md"}) {
      documents.add(Path.of(name));
    }
    return documents.stream();
  }

  private static List<Block> blocks(Path document) throws IOException {
    List<Block> blocks = new ArrayList<>();
    Matcher matcher = BLOCK.matcher(Files.readString(document));
    while (matcher.find()) {
      blocks.add(new Block(matcher.group(1), matcher.group(2)));
    }
    return blocks;
  }

  @ParameterizedTest
  @MethodSource("documents")
  void everyBlockRunsAndPrintsWhatTheDocumentSays(Path document) throws Exception {
    StringBuilder script = new StringBuilder(CHECK);
    List<String> printed = new ArrayList<>();
    int checks = 0;
    for (Block block : blocks(document)) {
      switch (block.language) {
        case "java" -> {
          for (String line : block.text.lines().toList()) {
            Matcher checked = CHECKED.matcher(line);
            if (checked.matches()) {
              checks++;
              script
                  .append("check(")
                  .append(checked.group(1))
                  .append(", \"")
                  .append(checked.group(2).strip().replace("\"", "\\\""))
                  .append("\");\n");
            } else {
              script.append(line).append('\n');
            }
          }
        }
        case "text" ->
            block.text.lines().map(String::strip).filter(l -> !l.isEmpty()).forEach(printed::add);
        case "sh" -> runShell(block.text.strip());
        case "xml" -> checkCoordinates(block.text);
        default -> throw new AssertionError("no rule for a block of " + block.language);
      }
    }
    if (script.length() == CHECK.length()) {
      return;
    }
    String out = jshell(script.toString());
    assertThat(out)
        .doesNotContain("|  Error")
        .doesNotContain("|  Exception")
        .doesNotContain("CHECK-FAILS");
    assertThat(out.split("CHECK-HOLDS", -1)).hasSize(checks + 1);
    String flat = out.lines().map(String::strip).reduce("", (a, b) -> a + "\n" + b);
    assertThat(printed).allSatisfy(line -> assertThat(flat).contains(line));
  }

  @Test
  void aWrongExpectationWouldBeCaught() throws Exception {
    String out = jshell(CHECK + "check(grams(5), \"6 g\");\ngrams(");
    assertThat(out).contains("CHECK-FAILS: 5 g lacks 6 g");
  }

  private static String jshell(String script) throws Exception {
    Result result = run(Path.of("").toAbsolutePath(), script + "\n/exit\n", "src/jshell/open");
    assertThat(result.code).as(result.out).isZero();
    assertThat(result.out).contains("Tourage: bakery arithmetic");
    return result.out;
  }

  private static void checkCoordinates(String xml) throws IOException {
    String pom = Files.readString(Path.of("pom.xml"));
    for (String tag : new String[] {"groupId", "artifactId", "version"}) {
      Matcher own = Pattern.compile("<" + tag + ">([^<]+)</" + tag + ">").matcher(pom);
      assertThat(own.find()).isTrue();
      assertThat(xml).contains("<" + tag + ">" + own.group(1) + "</" + tag + ">");
    }
  }

  private static void runShell(String command) throws Exception {
    assertThat(command.lines()).as("one command a block").hasSize(1);
    if (command.equals(TEST_COMMAND)) {
      assertThat(Files.readString(Path.of(".ci/run"))).contains("\n" + TEST_COMMAND + "\n");
      return;
    }
    if (command.startsWith("src/jshell/open")) {
      assertThat(run(Path.of("").toAbsolutePath(), "grams(5)\n/exit\n", "bash", "-c", command).out)
          .contains("==> 5 g");
      return;
    }
    Path copy = Files.createTempDirectory("tourage-copy");
    try {
      copyProject(copy);
      String repository = System.getProperty("localRepository");
      String here =
          repository == null
              ? command
              : command.replaceFirst("^mvn", "mvn -Dmaven.repo.local=" + repository);
      Result result = run(copy, "", "bash", "-c", here);
      assertThat(result.code).as(result.out).isZero();
      if (command.contains("exec:java")) {
        assertThat(result.out).contains("Lamination").contains("Timetable").contains("Safety");
      }
    } finally {
      delete(copy);
    }
  }

  private static void copyProject(Path copy) throws IOException {
    for (String name :
        new String[] {"pom.xml", "LICENSE", "README.md", "src", "reference-data", "docs"}) {
      try (Stream<Path> files = Files.walk(Path.of(name))) {
        for (Path file : files.toList()) {
          Path target = copy.resolve(file.toString());
          if (Files.isDirectory(file)) {
            Files.createDirectories(target);
          } else {
            Files.copy(file, target);
          }
        }
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      files
          .sorted(java.util.Comparator.reverseOrder())
          .forEach(
              p -> {
                try {
                  Files.delete(p);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    }
  }

  record Result(int code, String out) {}

  private static Result run(Path folder, String input, String... command) throws Exception {
    Path out = Files.createTempFile("tourage", ".out");
    try {
      ProcessBuilder builder =
          new ProcessBuilder(command)
              .directory(folder.toFile())
              .redirectErrorStream(true)
              .redirectOutput(out.toFile());
      Map<String, String> environment = builder.environment();
      environment.put("JAVA_HOME", System.getProperty("java.home"));
      environment.remove("JAVA_TOOL_OPTIONS");
      Process process = builder.start();
      process.getOutputStream().write(input.getBytes(StandardCharsets.UTF_8));
      process.getOutputStream().close();
      boolean ended = process.waitFor(240, TimeUnit.SECONDS);
      assertThat(ended).as("%s ends", List.of(command)).isTrue();
      return new Result(process.exitValue(), Files.readString(out));
    } finally {
      Files.delete(out);
    }
  }
}

package org.tourage.house;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.Serializable;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ArchitectureTest {
  /** The floors, ground floor first. Inside the ground floor, quantity stands on advice. */
  private static final List<List<String>> FLOORS =
      List.of(
          List.of("internal"),
          List.of("advice"),
          List.of("quantity"),
          List.of("physics"),
          List.of("schedule"),
          List.of("ingredient"),
          List.of("formula"),
          List.of(
              "lamination", "makeup", "doughtemperature", "fermentation", "substitution", "oven"),
          List.of("label"),
          List.of("day"),
          List.of("sheet"),
          List.of("command"));

  private static final JavaClasses CLASSES =
      new ClassFileImporter().importPath(Path.of("target/classes"));

  private static String packageOf(String room) {
    return "org.tourage." + room + "..";
  }

  @Test
  void everyRoomIsOnAFloor() {
    TreeSet<String> rooms = new TreeSet<>();
    CLASSES.forEach(c -> rooms.add(c.getPackageName().replace("org.tourage.", "")));
    rooms.remove("");
    assertThat(rooms).isEqualTo(new TreeSet<>(FLOORS.stream().flatMap(List::stream).toList()));
  }

  @Test
  void aRoomImportsOnlyRoomsOnLowerFloors() {
    List<String> below = new ArrayList<>();
    for (List<String> floor : FLOORS) {
      for (String room : floor) {
        List<String> allowed = new ArrayList<>(below);
        allowed.add(packageOf(room));
        classes()
            .that()
            .resideInAPackage(packageOf(room))
            .should()
            .onlyDependOnClassesThat(
                not(resideInAPackage("org.tourage.."))
                    .or(resideInAPackage(allowed.get(0)))
                    .or(
                        com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage(
                            allowed.toArray(new String[0]))))
            .check(CLASSES);
      }
      floor.forEach(room -> below.add(packageOf(room)));
    }
  }

  @Test
  void roomsFormNoCycles() {
    slices().matching("org.tourage.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void theStockImplementationIsUsedInOneClassOnly() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("org.tourage.quantity.UnitObjects")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("tech.units..")
        .check(CLASSES);
  }

  @Test
  void statesThatCanChangeAreNeverStatic() {
    noFields().that().areStatic().should().notBeFinal().check(CLASSES);
  }

  @Test
  void publicTypesOutsideBuildersAreFinalRecordsOrEnums() {
    classes()
        .that()
        .arePublic()
        .and()
        .areNotInterfaces()
        .and()
        // the one exception: what a file has wrong in many places is one of it as well
        .doNotHaveFullyQualifiedName("org.tourage.advice.BakeryException")
        .should()
        .haveModifier(JavaModifier.FINAL)
        .orShould()
        .beEnums()
        .check(CLASSES);
  }

  @Test
  void valuesTravelBySerialisation() {
    classes()
        .that()
        .areRecords()
        .and()
        .arePublic()
        .should()
        .implement(Serializable.class)
        .check(CLASSES);
  }

  /** What the command may name of the trades: words that a file can say, and no results. */
  private static final List<String> WORDS_OF_A_FILE =
      List.of(
          "fermentation.ColdTail",
          "fermentation.Cover",
          "fermentation.RateModel",
          "fermentation.Rosso1993",
          "lamination.Bench",
          "lamination.FatCurve",
          "lamination.Fold",
          "lamination.FoldSequence",
          "lamination.LaminationPlan$Setup",
          "lamination.LockIn",
          "lamination.Rollers",
          "lamination.Rollers$Sheeter",
          "makeup.Shape",
          "oven.DoughKind",
          "oven.OvenModel",
          "oven.OvenProfile",
          "oven.OvenProfile$Step",
          "oven.ThermalDeath");

  @Test
  void onlyTheDayJoinsTheTradesAndTheCommandCalculatesNothing() {
    List<String> allowed = WORDS_OF_A_FILE.stream().map(w -> "org.tourage." + w).toList();
    DescribedPredicate<JavaClass> results =
        DescribedPredicate.describe(
            "are results of a trade",
            c ->
                List.of(
                            "lamination",
                            "makeup",
                            "doughtemperature",
                            "fermentation",
                            "substitution",
                            "oven")
                        .stream()
                        .anyMatch(room -> c.getPackageName().equals("org.tourage." + room))
                    && !allowed.contains(c.getName()));
    noClasses()
        .that()
        .resideInAPackage("org.tourage.command..")
        .should()
        .dependOnClassesThat(results)
        .check(CLASSES);
  }

  @Test
  void noClassOfTheCommandIsLong() throws Exception {
    try (Stream<Path> files = Files.list(Path.of("src/main/java/org/tourage/command"))) {
      for (Path file : files.toList()) {
        try (Stream<String> lines = Files.lines(file)) {
          assertThat(lines.count()).as(file.toString()).isLessThan(300);
        }
      }
    }
  }
}

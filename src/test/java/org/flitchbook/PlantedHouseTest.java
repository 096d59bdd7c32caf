package org.flitchbook;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Plants a violation of every rule of the house and sees that rule, by its sentence, fail. */
final class PlantedHouseTest {

  private static final FloorRules FLOORS = new FloorRules(PlantedHouse.ROOT);
  private static final CodeRules CODE = new CodeRules(PlantedHouse.ROOT, false);

  @TempDir private static Path folder;

  private static PlantedHouse sound;
  private static JavaClasses soundClasses;

  private record Plant(ArchRule rule, String found, Map<String, String> types) {}

  private static Plant plant(ArchRule rule, String found, String type, String body) {
    return new Plant(rule, found, Map.of(type, body));
  }

  private static List<Plant> plants() {
    return List.of(
        plant(
            FLOORS.everyClassLivesOnAFloor(),
            "planted.attic.Trunk lives in a package without @Floor",
            "planted.attic.Trunk",
            "final class Trunk {}"),
        plant(
            FLOORS.importsAreDeclared(),
            "planted.check.Sneak.sums",
            "planted.check.Sneak",
            "final class Sneak { planted.sums.Sums sums; }"),
        plant(
            FLOORS.importsAreDeclared(),
            "planted.measure.Climber.checks",
            "planted.measure.Climber",
            "final class Climber { planted.check.Checks checks; }"),
        plant(
            FLOORS.importsPointDown(),
            "planted.measure.Climber.checks",
            "planted.measure.Climber",
            "final class Climber { planted.check.Checks checks; }"),
        plant(
            FLOORS.importsPointDown(),
            "planted.lot.Peep.doubts",
            "planted.lot.Peep",
            "final class Peep { planted.doubt.Doubts doubts; }"),
        room(
            FLOORS.declarationsPointDown(),
            "proud names check, which is not a lower floor",
            "proud",
            "check"),
        room(
            FLOORS.declarationsPointDown(),
            "vague names cellar, which is not a lower floor",
            "vague",
            "cellar"),
        plant(
            FLOORS.noCycles(),
            "Cycle detected",
            "planted.measure.Climber",
            "final class Climber { planted.check.Checks checks; }"),
        plant(
            CODE.onlyTheDoorIsPublic(),
            "planted.sums.Window is public and not the door of its package",
            "planted.sums.Window",
            "public final class Window {}"),
        room(
            CODE.everyRoomHasItsDoor(),
            "planted.walled has no public class of the name of its door",
            "walled",
            "measure"),
        plant(
            CODE.namesSayWhatAThingIs(),
            "planted.sums.SumHelper",
            "planted.sums.SumHelper",
            "final class SumHelper {}"),
        plant(
            CODE.packagesSayWhatTheyAreFor(),
            "planted.sums.util.Odds",
            "planted.sums.util.Odds",
            "final class Odds {}"),
        plant(
            CODE.noFloatingPointFields(),
            "planted.sums.Loose.celsius is a binary fraction",
            "planted.sums.Loose",
            "record Loose(double celsius) {}"),
        plant(
            CODE.noFloatingPointFields(),
            "planted.doubt.Loose.celsius is a binary fraction",
            "planted.doubt.Loose",
            "final class Loose { float[] celsius; }"),
        plant(
            CODE.noFloatingPointFields(),
            "planted.check.Loose.celsius is a binary fraction",
            "planted.check.Loose",
            "final class Loose { java.util.List<Double> celsius; }"),
        reach("java.time.Instant.now()", "java.time.Instant.now();"),
        reach(
            "java.time.LocalDate.now(java.time.ZoneId)",
            "java.time.LocalDate.now(java.time.ZoneOffset.UTC);"),
        reach("java.lang.System.currentTimeMillis()", "System.currentTimeMillis();"),
        reach("java.time.Clock.systemUTC()", "java.time.Clock.systemUTC();"),
        reach(
            "java.time.Clock.systemDefaultZone()",
            "java.util.function.Supplier<java.time.Clock> c = java.time.Clock::systemDefaultZone;"),
        reach("java.lang.System.out", "System.out.println();"),
        reach("java.lang.System.err", "System.err.println();"),
        reach("java.util.Locale.getDefault()", "java.util.Locale.getDefault();"),
        reach("java.time.ZoneId.systemDefault()", "java.time.ZoneId.systemDefault();"),
        reach("java.util.Random.<init>()", "new java.util.Random();"),
        library("org.apache.commons.csv..", "planted.sums"),
        library("com.fasterxml.jackson..", "planted.table"),
        library("com.google.zxing..", "planted.check"),
        library("org.apache.pdfbox..", "planted.check"),
        library("org.bouncycastle..", "planted.check"),
        library("picocli..", "planted.check"),
        pure("java.io.InputStream", "measure"),
        pure("java.io.UncheckedIOException", "sums"),
        pure("java.nio.file.Path", "lot"),
        pure("java.net.URI", "doubt"),
        pure("java.io.File", "check"));
  }

  /** Plants a package without classes on floor 2. */
  private static Plant room(ArchRule rule, String found, String name, String mayImport) {
    String info = PlantedHouse.roomInfo(name, 2, "Door", mayImport);
    return plant(rule, found, "planted." + name + ".package-info", info);
  }

  private static Plant reach(String found, String statement) {
    return plant(
        CODE.surroundingsComeInThroughTheCli(),
        found,
        "planted.check.Reacher",
        "final class Reacher { void reach() { " + statement + " } }");
  }

  private static Plant library(String library, String home) {
    return new Plant(
        CODE.oneHome(library),
        home + ".Borrower.lent",
        Map.of(
            library.replace("..", ".deep.Lent"),
            "public class Lent {}",
            home + ".Borrower",
            "final class Borrower { " + library.replace("..", ".deep.Lent") + " lent; }"));
  }

  private static Plant pure(String type, String room) {
    return plant(
        CODE.noInputOrOutput(),
        "planted." + room + ".Leak.leak",
        "planted." + room + ".Leak",
        "final class Leak { " + type + " leak; }");
  }

  /** Every room that the rules name, each with its door, and imports that are all allowed. */
  private static PlantedHouse soundHouse(Path folder) throws IOException {
    return new PlantedHouse(folder)
        .room("measure", 1, "Unit")
        .room("table", 1, "Tables")
        .room("sums", 2, "Sums", "measure")
        .room("lot", 3, "Lots", "measure")
        .room("doubt", 3, "Doubts", "lot")
        .room("check", 4, "Checks", "doubt", "lot")
        .room("cli", 7, "Main", "check")
        .type("planted.measure.Unit", "public enum Unit { GRAM }")
        .type("planted.table.Tables", "public final class Tables { double width; Lent lent; }")
        .type("planted.table.Lent", "final class Lent { org.apache.commons.csv.Csv csv; }")
        .type("org.apache.commons.csv.Csv", "public class Csv {}")
        .type("planted.sums.Sums", "public final class Sums { planted.measure.Unit unit; }")
        .type("planted.sums.Refused", "public class Refused extends RuntimeException {}")
        .type("planted.lot.Lots", "public record Lots(planted.measure.Unit unit) {}")
        .type("planted.doubt.Doubts", "public final class Doubts { planted.lot.Lots lots; }")
        .type("planted.check.Checks", "public interface Checks { planted.doubt.Doubts d(); }")
        .type("planted.cli.Main", "public class Main { Object now = java.time.Instant.now(); }");
  }

  @BeforeAll
  static void build() throws IOException {
    sound = soundHouse(folder.resolve("sound"));
    soundClasses = sound.build();
  }

  private static List<ArchRule> rules() {
    return Stream.concat(FLOORS.all().stream(), CODE.all().stream()).toList();
  }

  @TestFactory
  Stream<DynamicTest> a_planted_violation_is_named_by_its_rule() {
    List<Plant> plants = plants();
    return IntStream.range(0, plants.size())
        .mapToObj(
            i -> {
              Plant plant = plants.get(i);
              return DynamicTest.dynamicTest(
                  plant.found() + ": " + plant.rule().getDescription(),
                  () -> assertBites(plant, folder.resolve("plant" + i)));
            });
  }

  @Test
  void a_sound_house_breaks_no_rule() {
    assertAll(rules().stream().map(rule -> () -> rule.check(soundClasses)));
  }

  @Test
  void every_rule_has_a_plant() {
    List<String> planted =
        plants().stream().map(p -> p.rule().getDescription()).distinct().toList();
    List<String> all = rules().stream().map(ArchRule::getDescription).toList();
    assertEquals(all.stream().sorted().toList(), planted.stream().sorted().toList());
  }

  private static void assertBites(Plant plant, Path folder) throws IOException {
    JavaClasses classes = sound.extendedIn(folder).types(plant.types()).build();
    AssertionError error =
        assertThrows(AssertionError.class, () -> plant.rule().check(classes), plant.found());
    String said = error.getMessage();
    assertTrue(said.contains(plant.rule().getDescription()), said);
    assertTrue(said.contains(plant.found()), said);
  }
}

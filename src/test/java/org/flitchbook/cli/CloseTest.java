package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Closes the demo day: what is written, and when nothing is. */
final class CloseTest {

  /** As demo-data/README.md tells it. */
  private static final Map<String, String> VERDICTS =
      new TreeMap<>(
          Map.of(
              "26043-L1", "not met",
              "26044-B1", "not met",
              "26045-B1", "not met",
              "26045-B2", "not met",
              "26047-B1", "met",
              "26048-J1", "met",
              "26055-B1", "pending"));

  @TempDir private static Path folder;
  private static Path out;
  private static Ran first;
  private static Map<String, String> written;

  @BeforeAll
  static void close() {
    out = DemoDay.closed().out();
    first = DemoDay.closed().ran();
    written = Tree.hashes(out);
  }

  /** Closes the example book or, in the whole run, the demo day. */
  private static Ran closeAgain(Path out) {
    return SeededRun.isWhole()
        ? Ran.of("close", Tree.DEMO.resolve(Tree.DAY), "--out", out).expect(1)
        : Ran.of("close", Tree.EXAMPLE.resolve(Tree.DAY), "--out", out).expect(0);
  }

  private static Path revision() {
    return out.resolve(Tree.DAY).resolve("r1");
  }

  @Test
  void every_lot_the_day_and_its_deviations_are_written_and_nothing_else() {
    List<String> expected =
        Stream.concat(VERDICTS.keySet().stream(), Stream.of("deviations", "day"))
            .flatMap(name -> Stream.of(name + ".json", name + ".pdf"))
            .map(name -> Tree.DAY + "/r1/" + name)
            .toList();
    List<String> all = new ArrayList<>(expected);
    all.add(Tree.DAY + "/r1/bundle.zip");
    assertEquals(all.stream().sorted().toList(), List.copyOf(written.keySet()));
  }

  @Test
  void every_print_is_named_and_nothing_goes_to_the_errors() {
    List<String> named =
        first.out().lines().filter(line -> line.startsWith("    ")).map(String::strip).toList();
    assertEquals(
        Tree.walk(out).stream().map(Path::toString).filter(f -> f.endsWith(".pdf")).toList(),
        named);
    assertEquals("", first.err());
  }

  @Test
  void the_verdicts_are_those_that_the_demo_tells() {
    Map<String, String> found = new TreeMap<>();
    JsonNode day = Ran.json(Tree.text(revision().resolve("day.json")));
    day.get("lots").forEach(lot -> found.put(lot.get("lot").asText(), lot.get("verdict").asText()));
    assertEquals(VERDICTS, found);
  }

  @Test
  void each_lot_has_a_file_that_says_what_the_day_says_of_it() {
    JsonNode day = Ran.json(Tree.text(revision().resolve("day.json")));
    for (JsonNode lot : day.get("lots")) {
      String file = lot.get("lot").asText() + ".json";
      JsonNode own = Ran.json(Tree.text(revision().resolve(file)));
      assertEquals(List.of(lot), List.of(own.get("lots").get(0)), file);
      assertEquals(1, own.get("lots").size(), file);
    }
  }

  @Test
  void the_deviations_are_those_of_the_lots_that_are_held() {
    JsonNode report = Ran.json(Tree.text(revision().resolve("deviations.json")));
    assertEquals(
        List.of("26043-L1", "26044-B1", "26045-B1", "26045-B2"),
        report.get("lots").findValuesAsText("lot"));
  }

  @Test
  void check_prints_the_very_json_of_the_day() {
    Ran check = Ran.of("check", Tree.DEMO.resolve(Tree.DAY), "--json").expect(1);
    ObjectNode filed = (ObjectNode) Ran.json(Tree.text(revision().resolve("day.json")));
    assertEquals(0, filed.remove("filesLeft").asInt());
    assertEquals(filed.toPrettyString(), Ran.json(check.out()).toPrettyString());
  }

  @Test
  void the_book_is_left_untouched() {
    assertEquals(DemoDay.closed().before(), DemoDay.closed().after());
  }

  @Test
  void a_second_close_says_that_nothing_is_new_and_writes_nothing() {
    Path twice = folder.resolve("twice");
    closeAgain(twice);
    Map<String, String> before = Tree.hashes(twice);
    Path revision = twice.resolve(Tree.DAY).resolve("r1");
    Ran again = closeAgain(twice);
    assertAll(
        () ->
            assertTrue(
                again.out().endsWith("\nNothing new: " + revision + " holds these very records.\n"),
                again.out()),
        () -> assertFalse(again.out().contains("Written:")),
        () -> assertEquals(before, Tree.hashes(twice)));
  }

  @Test
  void another_locale_and_zone_give_the_same_bytes() {
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    Path here = folder.resolve("here");
    closeAgain(here);
    Path elsewhere = folder.resolve("elsewhere");
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      closeAgain(elsewhere);
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
    assertEquals(Tree.hashes(here), Tree.hashes(elsewhere));
  }

  @Test
  void the_manifest_of_the_bundle_verifies_and_holds_every_record_and_input() throws Exception {
    Map<String, byte[]> bundle = Zipped.read(revision().resolve("bundle.zip"));
    assertEquals(Zipped.manifest(bundle), Zipped.hashes(bundle));
    Map<String, Path> expected = new TreeMap<>();
    Tree.walk(revision()).forEach(file -> expected.put("records/" + file.getFileName(), file));
    Tree.walk(Tree.DEMO)
        .forEach(file -> expected.put("evidence/" + Tree.name(Tree.DEMO, file), file));
    Path templates = Path.of("templates");
    Tree.walk(templates)
        .forEach(file -> expected.put("evidence/templates/" + Tree.name(templates, file), file));
    expected.remove("records/bundle.zip");
    bundle.remove("manifest.sha256");
    assertEquals(expected.keySet(), bundle.keySet());
    expected.forEach((name, file) -> assertArrayEquals(Tree.bytes(file), bundle.get(name), name));
  }
}

package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.JsonSchema;
import org.flitchbook.json.Node;
import org.flitchbook.json.Schema;
import org.flitchbook.practice.ToolPractice;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.flitchbook.sheet.What;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The schemas that help while typing say the same as the readers. */
final class SchemaTest {

  private static final String FULL = "templates/limits/full.json";
  private static final Path RESOURCES =
      Path.of("src", "test", "resources", "org", "flitchbook", "plan");
  private static final Pattern ASKED = Pattern.compile("one of (.*)");

  private final Schemas schemas = new Schemas();

  /** A plan and a rule set in which each key stands that there is. */
  private static Draft full() {
    return Draft.of("full.json")
        .whole(FULL, Draft.text(RESOURCES.resolve("full-rules.json")))
        .with(
            Draft.CLASSES, "\"made\": \"2026-11-25\",", "\"made\": \"2026-11-25\", \"by\": \"x\",");
  }

  @ParameterizedTest
  @CsvSource({
    "plan.schema.json, src/test/resources/org/flitchbook/plan/plan.json",
    "plan.schema.json, src/test/resources/org/flitchbook/plan/full.json",
    "plan.schema.json, demo-data/wrenfold/plan.json",
    "limits.schema.json, templates/limits/us.json",
    "limits.schema.json, templates/limits/us-retail.json",
    "limits.schema.json, templates/limits/eu.json",
    "limits.schema.json, templates/limits/gb.json",
    "limits.schema.json, templates/limits/ca.json",
    "limits.schema.json, templates/limits/au-nz.json",
    "limits.schema.json, templates/limits/codex.json",
    "limits.schema.json, src/test/resources/org/flitchbook/plan/full-rules.json",
    "classes.schema.json, templates/classes.json",
    "doubts.schema.json, templates/doubts.json",
    "logs.schema.json, demo-data/wrenfold/2026-02-24/logs.json",
    "logs.schema.json, src/test/resources/org/flitchbook/lot/book/2026-02-24/logs.json",
    "logs.schema.json, src/test/resources/org/flitchbook/reading/logs.json",
    "words.schema.json, templates/words/es.json",
    "practice.schema.json, templates/practice.json"
  })
  void a_file_that_is_read_is_allowed(String schema, String file) {
    assertEquals(List.of(), schemas.faults(schema, Schemas.parse(Draft.text(Path.of(file)))));
  }

  @Test
  void the_schemas_are_what_the_binder_takes() {
    write("plan.schema.json", "A book's plan: plan.json", PlanFile.class);
    write("limits.schema.json", "A rule set: templates/limits/*.json", RuleSet.Written.class);
    write("classes.schema.json", "What a plan must control: templates/classes.json", Classes.class);
  }

  private static void write(String name, String title, Class<?> type) {
    JsonSchema.check(
        name,
        title,
        PlanFormats.BINDER.schema(type),
        Map.of(ChosenLimit.class, numbers(PlanFormats.BINDER.schema(Kind.Stated.class))));
  }

  /** What a plan may state otherwise than a rule set, under the keys of the kinds. */
  private static Map<String, Schema> numbers(Schema kinds) {
    Map<String, Schema> numbers = new TreeMap<>();
    for (Schema.Members kind : Schema.records(kinds)) {
      for (Schema.Member member : kind.members()) {
        if (member.inline()) {
          numbers.putAll(numbers(member.schema()));
        } else if (ChosenLimit.NUMBERS.contains(member.key())
            && !(member.schema() instanceof Schema.Bool)) {
          numbers.merge(member.key(), member.schema(), SchemaTest::wider);
          member.or().ifPresent(or -> numbers.merge(or, member.schema(), SchemaTest::wider));
        }
      }
    }
    return numbers;
  }

  private static Schema wider(Schema one, Schema other) {
    return one instanceof Schema.Measured ? one : other;
  }

  @Test
  void a_plan_and_a_rule_set_with_each_key_are_read() {
    assertEquals(List.of(), full().faults());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # schema            | file                       | objects of different keys
          plan.schema.json    | plan.json                  | 22
          limits.schema.json  | templates/limits/full.json | 14
          classes.schema.json | templates/classes.json     | 8
          """)
  void the_schema_names_the_keys_that_the_reader_asks_for(String schema, String file, int objects) {
    Map<String, Set<String>> asked = asked(file);
    assertEquals(objects, asked.size(), asked.keySet().toString());
    asked.forEach(
        (path, keys) -> assertEquals(schemas.keys(schema, path), keys, schema + " at " + path));
  }

  /** By path, what the reader offers in place of a key that it does not know. */
  private static Map<String, Set<String>> asked(String file) {
    Map<String, Set<String>> asked = new TreeMap<>();
    String text = full().files().get(file);
    for (int at = text.indexOf('{'); at >= 0; at = text.indexOf('{', at + 1)) {
      String changed = text.substring(0, at + 1) + "\"zzz\": 0, " + text.substring(at + 1);
      for (Fault fault : full().whole(file, changed).read().faults()) {
        Matcher keys = ASKED.matcher(fault.expected().toString());
        if (fault.place().column().endsWith("zzz") && keys.matches()) {
          String path = fault.place().column().replaceAll("\\[\\d+\\]", "[]");
          asked
              .computeIfAbsent(path.replaceAll("\\.?zzz$", ""), each -> new TreeSet<>())
              .addAll(Arrays.asList(keys.group(1).split(", ", -1)));
        }
      }
    }
    return asked;
  }

  /** The same for the logs, whose reader is that of a day. */
  @Test
  void the_schema_of_logs_names_the_keys_that_the_reader_asks_for() {
    String text = Draft.text(Path.of("src/test/resources/org/flitchbook/reading/logs.json"));
    Map<String, Set<String>> asked = new TreeMap<>();
    for (int at = text.indexOf('{'); at >= 0; at = text.indexOf('{', at + 1)) {
      String changed = text.substring(0, at + 1) + "\"zzz\": 0, " + text.substring(at + 1);
      Fault fault = unknownKey(changed);
      String path =
          fault.place().column().replaceAll("\\[\\d+\\]", "[]").replaceAll("\\.?zzz$", "");
      asked
          .computeIfAbsent(path, each -> new TreeSet<>())
          .addAll(Arrays.asList(fault.expected().toString().substring(7).split(", ", -1)));
    }
    assertEquals(4, asked.size());
    asked.forEach((path, keys) -> assertEquals(schemas.keys("logs.schema.json", path), keys, path));
  }

  private static Fault unknownKey(String logs) {
    SourceFile file = SourceFile.of("2026-02-24/logs.json", logs.getBytes(StandardCharsets.UTF_8));
    LocalDate date = LocalDate.of(2026, 2, 24);
    return Readings.read(date, List.of(file), new Hand(ZoneId.of("UTC"), '.', ToolPractice.get()))
        .faults()
        .stream()
        .filter(fault -> fault.rule().equals("unknown key"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void the_schema_names_the_words_of_the_sheets() {
    Set<String> words =
        Arrays.stream(What.values()).map(What::word).collect(Collectors.toCollection(TreeSet::new));
    assertEquals(words, words("plan.a-sheet-word"));
  }

  private static Set<String> words(String definition) {
    Node.Obj schema = Schemas.parse(Draft.text(Path.of("docs", "schema", "limits.schema.json")));
    Node.Obj defs = (Node.Obj) schema.members().get("$defs");
    Node.Items words =
        (Node.Items) ((Node.Obj) defs.members().get(definition)).members().get("enum");
    return words.items().stream()
        .map(word -> ((Node.Text) word).value())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** What the schema refuses, the reader refuses too. */
  @ParameterizedTest(name = "{1} for {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "zone": "America/New_York", |
          "accuracy": "0.5 °F"        | "accuracy": "-0.5 °F"
          "readability": "1 g"        | "readability": "1 mg"
          "kind": "logger"            | "kind": "loger"
          "paper": "A4"               | "paper": "A5"
          "rindShare": {              | "rindshare": {
          "support": "40 rinds weighed" | "support": " "
          "support": "a letter of the maker" | "support": " "
          "by": "MA"                  | "bye": "MA"
          "atMost": "180 ppm"         | "atMost": "180 kg"
          "atMost": "180 ppm"         | "atMost": "180 ppm", "below": "1 ppm"
          "decimalMark": ","          | "decimalMark": ";"
          "temperature": "°C"         | "temperature": "K"
          "is": "on"                  | "is": "off"
          "what": "turned"            | "what": "turnt"
          "kind": "cadence"           | "kind": "cadenza"
          "step": "cure"              | "step": "cured"
          "roles": [                  | "role": [
          """)
  void what_is_refused_by_the_one_is_refused_by_the_other(String found, String changed) {
    Draft draft = full().with(found, changed == null ? "" : changed);
    Node document = Schemas.parse(draft.files().get(Draft.PLAN));
    assertFalse(schemas.faults("plan.schema.json", document).isEmpty(), "by the schema");
    assertFalse(draft.faults().isEmpty(), "by the reader");
  }
}

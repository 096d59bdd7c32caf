package org.flitchbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.doubt.Doubts;
import org.flitchbook.doubt.Rule;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.plan.PlanRead;
import org.flitchbook.plan.Plans;
import org.flitchbook.plan.Product;
import org.flitchbook.practice.ToolPractice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.What;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the pages for people to what the program does. */
final class DocsTest {

  private static final Path REFERENCE = Path.of("docs", "reference.md");
  private static final Path ROOMS = Path.of("src", "main", "java", "org", "flitchbook");
  private static final LocalDate DATE = LocalDate.of(2026, 2, 24);
  private static final Hand HAND = new Hand(ZoneId.of("America/New_York"), '.', ToolPractice.get());

  private static final List<String> PAGES =
      List.of(
          "CHANGELOG.md",
          "DEVELOPERS.md",
          "README.md",
          "SECURITY.md",
          "demo-data/README.md",
          "docs/architecture.md",
          "docs/corpus.md",
          "docs/decisions/README.md",
          "docs/dependencies.md",
          "docs/goals.md",
          "docs/ledger.md",
          "docs/limits.md",
          "docs/performance.md",
          "docs/reference.md",
          "docs/sources.md",
          "docs/your-day.md");

  /** A row of the table of rooms: floor, room, job, door. */
  private static final Pattern ROOM = Pattern.compile("\\| \\d+ \\| `\\w+` \\| .* \\| `\\w+` \\|");

  static Stream<Path> pages() throws IOException {
    return MarkdownPage.all();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pages")
  void every_link_leads_to_a_file_and_a_heading(Path page) throws IOException {
    assertEquals(List.of(), MarkdownPage.of(page).deadLinks());
  }

  @Test
  void the_pages_are_found() throws IOException {
    List<String> pages = MarkdownPage.all().map(Path::toString).toList();
    assertTrue(pages.containsAll(PAGES), pages.toString());
  }

  @Test
  void the_first_two_blocks_of_the_readme_are_its_two_commands() throws IOException {
    List<String> blocks = MarkdownPage.of(Path.of("README.md")).blocks("");
    assertEquals(
        List.of(
            "./flitchbook close demo-data/wrenfold/2026-02-24 --out out\n", "./mvnw -B verify\n"),
        blocks.subList(0, 2));
  }

  @ParameterizedTest
  @EnumSource(Sheet.class)
  void the_reference_has_a_row_for_every_word_of_a_sheet_and_each_row_is_read(Sheet sheet)
      throws IOException {
    Day day = read(sheet.word() + ".csv", example(sheet.word() + ".csv", "csv"));
    assertEquals(List.of(), day.faults());
    List<What> shown = day.entries().stream().map(Entry::what).distinct().toList();
    assertEquals(List.of(), What.on(sheet).stream().filter(w -> !shown.contains(w)).toList());
  }

  @Test
  void the_layout_of_logs_in_the_reference_is_read() throws IOException {
    Day day = read("logs.json", example("The probe logs", "json"));
    assertEquals(List.of("log missing"), day.faults().stream().map(Fault::rule).toList());
  }

  @Test
  void the_plan_in_the_reference_can_be_used_and_covers_its_class() throws IOException {
    List<SourceFile> templates = new ArrayList<>();
    for (String name :
        List.of("classes.json", "practice.json", "limits/us.json", "limits/us-retail.json")) {
      byte[] bytes = Files.readAllBytes(Path.of("templates", name));
      templates.add(SourceFile.of("templates/" + name, bytes));
    }
    PlanRead read = Plans.read(file("plan.json", plan()), templates, List.of());
    assertEquals(List.of(), read.faults());
    Product product = read.plan().orElseThrow().products().get(0);
    assertEquals(List.of(), product.missing());
  }

  private static String plan() throws IOException {
    return example("The plan", "json");
  }

  /** The blocks of sheets on the newcomer's page, in the order in which it shows them. */
  private static final List<Sheet> YOUR_DAY =
      List.of(
          Sheet.INSTRUMENTS,
          Sheet.CURE,
          Sheet.CURE,
          Sheet.CURE,
          Sheet.SOAK,
          Sheet.DRY,
          Sheet.SMOKE,
          Sheet.CHILL);

  @Test
  void each_row_and_log_of_your_day_is_read() throws IOException {
    MarkdownPage page = MarkdownPage.of(Path.of("docs", "your-day.md"));
    List<String> rows = page.blocks("csv");
    assertEquals(YOUR_DAY.size(), rows.size());
    for (int i = 0; i < rows.size(); i++) {
      Day day = read(YOUR_DAY.get(i).word() + ".csv", rows.get(i));
      assertEquals(List.of(), day.faults(), rows.get(i));
    }
    Day logs = read("logs.json", page.blocks("json").get(0));
    assertEquals(List.of("log missing"), logs.faults().stream().map(Fault::rule).toList());
  }

  @Test
  void every_decision_has_a_number_of_its_own_and_stands_in_the_index() throws IOException {
    String index = Files.readString(Path.of("docs", "decisions", "README.md"));
    try (Stream<Path> pages = Files.list(Path.of("docs", "decisions"))) {
      List<String> names =
          pages
              .map(page -> page.getFileName().toString())
              .filter(name -> !name.equals("README.md"))
              .sorted()
              .toList();
      for (int i = 0; i < names.size(); i++) {
        String name = names.get(i);
        assertEquals(i + 1, Integer.parseInt(name.substring(0, 4)), name);
        String first = Files.readAllLines(Path.of("docs", "decisions", name)).get(0);
        String title = first.replaceFirst("# \\d+\\. ", "");
        assertEquals("# " + (i + 1) + ". " + title, first);
        assertTrue(index.contains("| " + (i + 1) + " | [" + title + "](" + name + ") |"), name);
      }
    }
  }

  @Test
  void every_rule_for_dirty_data_stands_in_the_reference_with_its_severity() throws IOException {
    String reference = Files.readString(REFERENCE);
    byte[] bytes = Files.readAllBytes(Path.of("templates", "doubts.json"));
    List<Rule> rules = Doubts.rules(SourceFile.of("doubts.json", bytes)).all();
    assertEquals(68, rules.size());
    assertEquals(
        List.of(),
        rules.stream()
            .map(rule -> "| " + rule.name() + " | " + rule.severity().word() + " |")
            .filter(row -> !reference.contains(row))
            .toList());
  }

  @Test
  void every_room_stands_in_the_layout_on_its_floor_with_its_door() throws IOException {
    String developers = Files.readString(Path.of("DEVELOPERS.md"));
    try (Stream<Path> rooms = Files.list(ROOMS)) {
      List<Path> all = rooms.filter(Files::isDirectory).sorted().toList();
      assertEquals(all.size(), developers.lines().filter(ROOM.asMatchPredicate()).count());
      for (Path room : all) {
        String contract = Files.readString(room.resolve("package-info.java"));
        String row =
            "| "
                + between(contract, "floor = ", ",")
                + " | `"
                + between(contract, "name = \"", "\"")
                + "` |";
        String door = "| `" + between(contract, "door = \"", "\"") + "` |";
        boolean told = developers.lines().anyMatch(l -> l.startsWith(row) && l.endsWith(door));
        assertTrue(told, row + " … " + door);
      }
    }
  }

  private static String between(String text, String before, String after) {
    int from = text.indexOf(before) + before.length();
    return text.substring(from, text.indexOf(after, from));
  }

  private static String example(String heading, String language) throws IOException {
    return MarkdownPage.of(REFERENCE).under(heading).blocks(language).get(0);
  }

  private static Day read(String name, String text) {
    return Readings.read(DATE, List.of(file(DATE + "/" + name, text)), HAND);
  }

  private static SourceFile file(String name, String text) {
    return SourceFile.of(name, text.getBytes(StandardCharsets.UTF_8));
  }
}

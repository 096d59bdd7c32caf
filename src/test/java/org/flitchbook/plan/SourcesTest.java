package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.Golden;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.junit.jupiter.api.Test;

/** The page of sources repeats the data files; what stands above its first table is prose. */
final class SourcesTest {

  private static final Path PAGE = Path.of("docs", "sources.md");
  private static final CheckedBy TESTS = CheckedBy.read();

  @Test
  void the_page_of_sources_is_what_the_rule_sets_say() {
    String page = Draft.text(PAGE);
    String prose = page.substring(0, page.indexOf("\n## ") + 1);
    String sections =
        ruleSets().stream().map(SourcesTest::section).collect(Collectors.joining("\n"));
    Golden.check("../../../../../docs/sources.md", prose + sections);
  }

  @Test
  void each_limit_is_named_by_a_test() {
    List<String> unchecked =
        ruleSets().stream()
            .flatMap(file -> RuleSet.read(file).value().stream())
            .flatMap(set -> set.limits().keySet().stream())
            .filter(id -> TESTS.of(id).isEmpty())
            .toList();
    assertEquals(List.of(), unchecked);
  }

  /** Put together here, so that this test does not name what it says that nobody names. */
  @Test
  void a_part_of_an_id_is_not_named_by_a_test_of_the_whole() {
    String whole = String.join(".", "us", "424.22-b-1", "nitrite-floor");
    assertEquals(Set.of(), TESTS.of(whole.replace("-floor", "-flo")));
    assertEquals(Set.of(), TESTS.of(whole.replace("us.", "s.")));
    assertEquals(true, TESTS.of(whole).contains("IngoingTest"));
  }

  /** By their names in the order of code points. */
  private static List<SourceFile> ruleSets() {
    try (Stream<Path> files = Files.list(Path.of("templates", "limits"))) {
      return files
          .map(file -> file.getFileName().toString())
          .sorted()
          .map(
              name ->
                  SourceFile.of(
                      name,
                      Draft.text(Path.of("templates", "limits", name))
                          .getBytes(StandardCharsets.UTF_8)))
          .toList();
    } catch (IOException unread) {
      throw new UncheckedIOException(unread);
    }
  }

  private static String section(SourceFile file) {
    Binder.Bound<RuleSet> read = RuleSet.read(file);
    RuleSet set = read.value().orElseThrow();
    Node.Obj head = Json.read(file.name(), file.bytes()).object().orElseThrow();
    List<String> lines = new ArrayList<>();
    lines.add("## " + file.name() + "\n");
    String made = head.text("made").orElseThrow();
    lines.add(set.title() + ". Made " + made + " by " + head.text("by").orElseThrow() + ".\n");
    lines.add("| limit | judges | document | clause | edition | standing | checked by |");
    lines.add("| --- | --- | --- | --- | --- | --- | --- |");
    set.limits().values().stream()
        .sorted(Comparator.comparing(Limit::id))
        .forEach(limit -> lines.add(row(limit)));
    lines.addAll(exemptions(set));
    lines.add("\nNot read in its own text:\n");
    set.notRead().forEach(text -> lines.add("- " + text));
    assertEquals(List.of(), read.faults());
    return String.join("\n", lines) + "\n";
  }

  private static List<String> exemptions(RuleSet set) {
    List<String> lines = new ArrayList<>();
    if (!set.exemptions().isEmpty()) {
      lines.add("\n| exemption | from | document | clause | edition | standing |");
      lines.add("| --- | --- | --- | --- | --- | --- |");
    }
    for (RuleSet.Exemption each : set.exemptions()) {
      lines.add(row(cells(each.name(), each.covers(), each.source())));
    }
    return lines;
  }

  private static String row(Limit limit) {
    Stream<String> cells = cells(limit.id(), judges(limit.kind()), limit.source());
    return row(Stream.concat(cells, Stream.of(TESTS.shortly(limit.id()))));
  }

  private static Stream<String> cells(String name, String judges, Source source) {
    return Stream.of(
        name,
        judges,
        source.document(),
        source.clause(),
        source.edition(),
        source.standing().word());
  }

  private static String row(Stream<String> cells) {
    return cells
        .map(cell -> cell.replace("|", "\\|"))
        .collect(Collectors.joining(" | ", "| ", " |"));
  }

  private static Quantity printed(Quantity sodium, Ratio worth) {
    return new Quantity(sodium.value().over(worth), sodium.unit());
  }

  private static String judges(Kind kind) {
    if (kind instanceof Kind.Bound bound) {
      return bound.figure().word()
          + bound(bound.ceiling())
          + bound.limit()
          + bound
              .potassium()
              .map(worth -> ", of potassium nitrite " + printed(bound.limit(), worth))
              .orElse("");
    }
    if (kind instanceof Kind.TimeAtTemperature table) {
      return table.what().word() + " " + rows(table.rows());
    }
    if (kind instanceof Kind.Span span) {
      return span.what().word() + " " + stages(span.stages()) + added(span);
    }
    if (kind instanceof Kind.Holding holding) {
      String held = holding.what().word() + bound(holding.ceiling()) + holding.limit();
      return held + ", seen every " + holding.every() + allowed(holding);
    }
    return judgesTimeAndEntries(kind);
  }

  private static String judgesTimeAndEntries(Kind kind) {
    if (kind instanceof Kind.Length length) {
      String between = length.from().word() + " to " + length.to().word();
      return between + bound(!length.atLeast()) + length.limit();
    }
    if (kind instanceof Kind.Cadence cadence) {
      return cadence.what().word() + " every " + cadence.every();
    }
    if (kind instanceof Kind.Share share) {
      return share.options().stream()
          .map(Kind.Option::name)
          .collect(Collectors.joining(", ", "cooking time by ", ""));
    }
    Kind.Presence entry = (Kind.Presence) kind;
    return entry.what().word()
        + " entered"
        + entry.before().map(event -> " before " + event.word()).orElse("")
        + (entry.with().isEmpty() ? "" : " with " + String.join(", ", entry.with()));
  }

  private static String bound(boolean ceiling) {
    return ceiling ? " at most " : " at least ";
  }

  private static String rows(List<Kind.Hold> rows) {
    Kind.Hold first = rows.get(0);
    Kind.Hold last = rows.get(rows.size() - 1);
    String one = first.atLeast() + " for " + first.time();
    return rows.size() == 1
        ? one
        : one + " to " + last.atLeast() + " for " + last.time() + ", " + rows.size() + " rows";
  }

  private static String stages(List<Kind.Stage> stages) {
    return stages.stream()
        .map(stage -> stage.from() + " to " + stage.to() + " in at most " + stage.atMost())
        .collect(Collectors.joining(", "));
  }

  private static String added(Kind.Span span) {
    return span.warmDrying()
        .map(
            drying ->
                ", with drying above %s beyond %s (%s)"
                    .formatted(drying.above(), drying.beyond(), drying.note()))
        .orElse("");
  }

  private static String allowed(Kind.Holding holding) {
    return holding.allow().value().signum() == 0
        ? ""
        : ", outside in all at most " + holding.allow();
  }
}

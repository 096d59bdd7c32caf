package org.flitchbook.look;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.table.Encoding;

/** Tells what was seen, to people and to programs. */
final class Report {

  /** So many of the lines before a heading are shown. */
  private static final int SHOWN = 8;

  private final SourceFile file;
  private final Encoding encoding;
  private final Frame frame;
  private final Survey survey;
  private final Map<String, Object> entry;
  private final List<Oddities.Oddity> oddities;

  Report(
      SourceFile file,
      Encoding encoding,
      Frame frame,
      Survey survey,
      Proposal proposal,
      List<Fault> faults) {
    this.file = file;
    this.encoding = encoding;
    this.frame = frame;
    this.survey = survey;
    this.entry = proposal.entry();
    this.oddities = Oddities.of(survey, faults);
  }

  String text() {
    StringBuilder text = new StringBuilder();
    text.append(file.name()).append(": ").append(survey.rows()).append(" rows\n\n");
    facts(text);
    text.append('\n');
    columns(text);
    if (!oddities.isEmpty()) {
      text.append("\nOdd:\n");
      oddities.forEach(each -> text.append("- ").append(told(each)).append('\n'));
    }
    text.append(
        "\nAn entry for logs.json. Answer each \"? \": while one stands, the log is refused.\n\n");
    return text.append(new String(Json.write(Map.of("logs", List.of(entry))), UTF_8)).toString();
  }

  private static String told(Oddities.Oddity oddity) {
    return (oddity.line() == 0 ? "" : "line " + oddity.line() + ": ") + oddity.words();
  }

  private void facts(StringBuilder text) {
    String mark = encoding.marked() ? ", by its byte order mark" : "";
    fact(text, "encoding", encoding.name() + mark);
    fact(text, "delimiter", delimiter());
    fact(text, "decimal", survey.decimal().orElse("no number has one"));
    int skip = frame.layout().skip();
    String lines = skip == 0 ? "" : "; before it stand";
    fact(text, "heading", "line " + frame.heading().line() + lines);
    frame.before().stream().limit(SHOWN).forEach(line -> fact(text, "", line));
    survey
        .clock()
        .ifPresent(
            clock -> {
              fact(text, "first time", clock.first());
              fact(text, "last time", clock.last());
              fact(text, "interval", interval(clock));
            });
  }

  private String delimiter() {
    return switch (frame.delimiter()) {
      case '\t' -> "tab";
      case ';' -> "semicolon";
      default -> "comma";
    };
  }

  private static String interval(Clock clock) {
    return clock.pace().usual() == 0 ? "below 1 s" : Oddities.length(clock.pace().usual(), clock);
  }

  private static void fact(StringBuilder text, String name, String value) {
    text.append("  ").append(padded(name, 12)).append(value).append('\n');
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(Math.max(1, width - text.length()));
  }

  private void columns(StringBuilder text) {
    int width = 8;
    for (Column column : survey.columns()) {
      width = Math.max(width, column.word().length() + 2);
    }
    text.append("  ").append(padded("column", width)).append("numbers  lowest    highest\n");
    for (int index = 0; index < survey.columns().size(); index++) {
      Column column = survey.columns().get(index);
      if (column.word().isEmpty() && column.filled() == 0) {
        continue;
      }
      String numbers = survey.isOfTime(index) ? "time" : column.share() + " %";
      String line =
          "  "
              + padded(column.word(), width)
              + padded(numbers, 9)
              + (survey.isOfTime(index)
                  ? ""
                  : padded(shown(column.lowest()), 10) + shown(column.highest()));
      text.append(line.stripTrailing()).append('\n');
    }
  }

  private static String shown(Optional<BigDecimal> number) {
    return number.map(BigDecimal::toPlainString).orElse("–");
  }

  Map<String, Object> tree() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", "1");
    tree.put("file", file.name());
    tree.put("sha256", file.sha256());
    tree.put("rows", survey.rows());
    tree.put("encoding", encoding.name());
    tree.put("marked", encoding.marked());
    tree.put("delimiter", String.valueOf(frame.delimiter()));
    survey.decimal().ifPresent(mark -> tree.put("decimal", mark));
    tree.put("heading", frame.heading().line());
    survey.clock().ifPresent(clock -> tree.put("time", time(clock)));
    tree.put("columns", columnTrees());
    tree.put("odd", oddities.stream().map(Report::tree).toList());
    tree.put("logs", List.of(entry));
    return tree;
  }

  private Map<String, Object> time(Clock clock) {
    Map<String, Object> time = new LinkedHashMap<>();
    time.put(
        "columns", clock.columns().stream().map(index -> frame.heading().cell(index)).toList());
    time.put("first", clock.first());
    time.put("last", clock.last());
    time.put("interval", clock.pace().usual());
    return time;
  }

  private List<Object> columnTrees() {
    List<Object> trees = new ArrayList<>();
    for (Column column : survey.columns()) {
      Map<String, Object> tree = new LinkedHashMap<>();
      tree.put("column", column.word());
      tree.put("filled", column.filled());
      tree.put("numbers", column.numbers());
      column.lowest().ifPresent(lowest -> tree.put("lowest", lowest));
      column.highest().ifPresent(highest -> tree.put("highest", highest));
      trees.add(tree);
    }
    return trees;
  }

  private static Map<String, Object> tree(Oddities.Oddity oddity) {
    Map<String, Object> tree = new LinkedHashMap<>();
    if (oddity.line() > 0) {
      tree.put("line", oddity.line());
    }
    tree.put("found", oddity.words());
    return tree;
  }
}

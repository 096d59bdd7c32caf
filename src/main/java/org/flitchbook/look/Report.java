package org.flitchbook.look;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;
import org.flitchbook.table.Text;

/** Says what was seen, to people and to programs. */
final class Report {

  /** So many of the lines before a heading are shown. */
  private static final int SHOWN = 8;

  private final SourceFile file;
  private final Text encoding;
  private final LogTable table;
  private final LogScan scan;
  private final Language language;
  private final EntryProposal proposal;
  private final List<Oddities.Oddity> oddities;
  private final StringBuilder text = new StringBuilder();

  Report(
      SourceFile file,
      Text encoding,
      LogTable table,
      LogScan scan,
      List<Fault> faults,
      Language language) {
    this.file = file;
    this.encoding = encoding;
    this.table = table;
    this.scan = scan;
    this.language = language;
    this.proposal = new EntryProposal(file.baseName(), encoding, table, scan, language);
    this.oddities = Oddities.of(scan, faults);
  }

  String text() {
    line(say("look.rows", "{0}: {1} rows", file.name(), scan.rows()));
    text.append('\n');
    facts();
    text.append('\n');
    columns();
    if (!oddities.isEmpty()) {
      text.append('\n');
      line(say("look.odd", "Odd:"));
      oddities.forEach(each -> text.append("- ").append(said(each)).append('\n'));
    }
    text.append('\n');
    line(
        say(
            "look.entry",
            "An entry for logs.json. Answer each \"? \": while one stands, the log is refused."));
    text.append('\n');
    Map<String, Object> entry = Map.of("logs", List.of(proposal.entry()));
    return text.append(new String(Json.write(entry), UTF_8)).toString();
  }

  private void line(Message words) {
    text.append(words.in(language)).append('\n');
  }

  private String said(Oddities.Oddity oddity) {
    Message said =
        oddity.line() == 0
            ? oddity.found()
            : say("look.odd.line", "line {0}: {1}", oddity.line(), oddity.found());
    return said.in(language);
  }

  private void facts() {
    fact(
        say("look.fact.encoding", "encoding"),
        encoding.marked()
            ? say("look.encoding.marked", "{0}, by its byte order mark", encoding.encoding())
            : Message.of(encoding.encoding()));
    fact(say("look.fact.delimiter", "delimiter"), delimiter());
    fact(
        say("look.fact.decimal", "decimal"),
        proposal.decimal().map(Message::of).orElse(say("look.decimal.none", "no number has one")));
    int line = table.heading().line();
    fact(
        say("look.fact.heading", "heading"),
        table.layout().skip() == 0
            ? say("look.heading.line", "line {0}", line)
            : say("look.heading.behind", "line {0}; before it stand", line));
    table.before().stream().limit(SHOWN).forEach(each -> fact(Message.of(""), Message.of(each)));
    scan.time.ifPresent(
        time -> {
          fact(say("look.fact.first", "first time"), Message.of(time.first));
          fact(say("look.fact.last", "last time"), Message.of(time.last));
          fact(say("look.fact.interval", "interval"), interval(time));
        });
  }

  private Message delimiter() {
    return switch (table.delimiter()) {
      case '\t' -> say("look.delimiter.tab", "tab");
      case ';' -> say("look.delimiter.semicolon", "semicolon");
      default -> say("look.delimiter.comma", "comma");
    };
  }

  private static Message interval(TimeColumn time) {
    long usual = time.reader().steps.usual();
    return usual == 0 ? say("look.interval.short", "below 1 s") : Oddities.length(usual, time);
  }

  private void fact(Argument name, Argument value) {
    text.append("  ").append(padded(name, 12)).append(value.in(language)).append('\n');
  }

  private String padded(Argument words, int width) {
    String shown = words.in(language);
    return shown + " ".repeat(Math.max(1, width - shown.length()));
  }

  private void columns() {
    int width =
        Math.max(8, scan.columns.stream().mapToInt(each -> each.word.length() + 2).max().orElse(0));
    row(
        width,
        say("look.column", "column"),
        say("look.numbers", "numbers"),
        say("look.lowest", "lowest"),
        say("look.highest", "highest"));
    for (int index = 0; index < scan.columns.size(); index++) {
      LogColumn column = scan.columns.get(index);
      Message word = Message.of(column.word);
      if (scan.isOfTime(index)) {
        row(width, word, say("look.time", "time"), Message.of(""), Message.of(""));
      } else if (!column.word.isEmpty() || column.filled > 0) {
        Message share = say("look.share", "{0} %", column.share());
        row(width, word, share, shown(column.lowest), shown(column.highest));
      }
    }
  }

  private void row(int width, Message word, Message numbers, Message lowest, Message highest) {
    String cells = padded(word, width) + padded(numbers, 9) + padded(lowest, 10);
    text.append("  ").append((cells + highest.in(language)).stripTrailing()).append('\n');
  }

  private static Message shown(Optional<BigDecimal> number) {
    return Message.of(number.map(BigDecimal::toPlainString).orElse("–"));
  }

  Map<String, Object> tree() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("flitchbook", "1");
    tree.put("file", file.name());
    tree.put("sha256", file.sha256());
    tree.put("rows", scan.rows());
    tree.put("encoding", encoding.encoding());
    tree.put("marked", encoding.marked());
    tree.put("delimiter", String.valueOf(table.delimiter()));
    proposal.decimal().ifPresent(mark -> tree.put("decimal", mark));
    tree.put("heading", table.heading().line());
    scan.time.ifPresent(time -> tree.put("time", tree(time)));
    tree.put("columns", scan.columns.stream().map(Report::tree).toList());
    tree.put("odd", oddities.stream().map(this::tree).toList());
    tree.put("logs", List.of(proposal.entry()));
    return tree;
  }

  private Map<String, Object> tree(TimeColumn time) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("columns", time.words(table.heading()));
    tree.put("first", time.first);
    tree.put("last", time.last);
    tree.put("interval", time.reader().steps.usual());
    return tree;
  }

  private static Map<String, Object> tree(LogColumn column) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("column", column.word);
    tree.put("filled", column.filled);
    tree.put("numbers", column.numbers);
    column.lowest.ifPresent(lowest -> tree.put("lowest", lowest));
    column.highest.ifPresent(highest -> tree.put("highest", highest));
    return tree;
  }

  private Map<String, Object> tree(Oddities.Oddity oddity) {
    Map<String, Object> tree = new LinkedHashMap<>();
    if (oddity.line() > 0) {
      tree.put("line", oddity.line());
    }
    tree.put("found", oddity.found().in(language));
    tree.putAll(oddity.found().json());
    return tree;
  }
}

package org.flitchbook.look;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;
import org.flitchbook.table.FileText;

/** Says what was seen, to people and to programs. */
record Report(
    SourceFile file,
    FileText encoding,
    LogTable table,
    LogScan scan,
    Language language,
    EntryProposal proposal,
    int read,
    List<Oddities.Oddity> oddities) {

  /** So many of the lines before a heading are shown. */
  private static final int SHOWN = 8;

  String text() {
    List<String> lines = new ArrayList<>();
    lines.add(say("look.rows", "{0}: {1} rows", file.name(), scan.rows()).in(language));
    lines.add("");
    lines.addAll(facts());
    lines.add("");
    lines.addAll(columns());
    if (!oddities.isEmpty()) {
      lines.add("");
      lines.add(say("look.odd", "Odd:").in(language));
      oddities.forEach(each -> lines.add("- " + said(each)));
    }
    Message entry =
        say(
            "look.entry",
            "An entry for logs.json. Answer each \"? \": while one stands, the log is refused.");
    byte[] json = Json.write(Map.of("logs", List.of(proposal.entry())));
    lines.addAll(List.of("", entry.in(language), "", new String(json, UTF_8)));
    return String.join("\n", lines);
  }

  private String said(Oddities.Oddity oddity) {
    Message said =
        oddity.line() == 0
            ? oddity.found()
            : say("look.odd.line", "line {0}: {1}", oddity.line(), oddity.found());
    return said.in(language);
  }

  private List<String> facts() {
    List<String> facts = new ArrayList<>();
    facts.add(
        fact(
            say("look.fact.encoding", "encoding"),
            encoding.marked()
                ? say("look.encoding.marked", "{0}, by its byte order mark", encoding.encoding())
                : Message.of(encoding.encoding())));
    facts.add(fact(say("look.fact.delimiter", "delimiter"), delimiter()));
    Message decimal =
        proposal.decimal().map(Message::of).orElse(say("look.decimal.none", "no number has one"));
    facts.add(fact(say("look.fact.decimal", "decimal"), decimal));
    facts.add(fact(say("look.fact.heading", "heading"), heading()));
    table.before().stream()
        .limit(SHOWN)
        .forEach(each -> facts.add(fact(Message.of(""), Message.of(each))));
    scan.time.ifPresent(
        time -> {
          facts.add(fact(say("look.fact.first", "first time"), Message.of(time.first)));
          facts.add(fact(say("look.fact.last", "last time"), Message.of(time.last)));
          facts.add(fact(say("look.fact.interval", "interval"), interval(time)));
        });
    facts.add(
        fact(
            say("look.fact.read", "read"),
            zoneIsKnown()
                ? say("look.read", "{0} of {1} rows, by the entry below", read, scan.rows())
                : say(
                    "look.read-fixed",
                    "{0} of {1} rows, by the entry below, if nobody changed the clock",
                    read,
                    scan.rows())));
    return facts;
  }

  private boolean zoneIsKnown() {
    return scan.time.flatMap(time -> time.zone(table)).isPresent();
  }

  private Message heading() {
    boolean first = table.layout().skip() == 0;
    int line = table.heading().line();
    if (table.headed()) {
      return first
          ? say("look.heading.line", "line {0}", line)
          : say("look.heading.behind", "line {0}; before it stand", line);
    }
    return first
        ? say("look.heading.none", "none; the columns go by their numbers")
        : say(
            "look.heading.none-behind",
            "none that fits; the columns go by their numbers; before the rows stand");
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

  private String fact(Argument name, Argument value) {
    return "  " + padded(name, 12) + value.in(language);
  }

  private String padded(Argument words, int width) {
    String shown = words.in(language);
    return shown + " ".repeat(Math.max(1, width - shown.length()));
  }

  private List<String> columns() {
    List<String> rows = new ArrayList<>();
    rows.add(
        row(
            say("look.column", "column"),
            say("look.numbers", "numbers"),
            say("look.lowest", "lowest"),
            say("look.highest", "highest"),
            say("look.others", "no numbers")));
    Message none = Message.of("");
    for (LogColumn column : scan.columns) {
      Message word = Message.of(column.word);
      if (scan.isOfTime(column)) {
        rows.add(row(word, say("look.time", "time"), none, none, none));
      } else if (!column.word.isEmpty() || column.filled > 0) {
        rows.add(
            row(
                word,
                share(column.share()),
                shown(column.lowest()),
                shown(column.highest()),
                others(column)));
      }
    }
    return rows;
  }

  private static Message share(int percent) {
    return say("look.share", "{0} %", percent);
  }

  private static Message others(LogColumn column) {
    return column.others.isEmpty()
        ? Message.of("")
        : say(
            "look.no-numbers",
            "{0}: {1}",
            share(100 - column.share()),
            Oddities.counted(column.others));
  }

  private String row(
      Message word, Message numbers, Message lowest, Message highest, Message others) {
    int longest = scan.columns.stream().mapToInt(each -> each.word.length()).max().orElse(0);
    String cells = padded(word, Math.max(8, longest + 2)) + padded(numbers, 9) + padded(lowest, 10);
    return "  " + (cells + padded(highest, 10) + others.in(language)).stripTrailing();
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
    tree.put("read", read);
    tree.put("encoding", encoding.encoding());
    tree.put("marked", encoding.marked());
    tree.put("delimiter", String.valueOf(table.delimiter()));
    proposal.decimal().ifPresent(mark -> tree.put("decimal", mark));
    if (table.headed()) {
      tree.put("heading", table.heading().line());
    }
    scan.time.ifPresent(time -> tree.put("time", tree(time)));
    tree.put("columns", scan.columns.stream().map(this::tree).toList());
    tree.put("odd", oddities.stream().map(this::tree).toList());
    tree.put("logs", List.of(proposal.entry()));
    return tree;
  }

  private Map<String, Object> tree(TimeColumn time) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("columns", time.words(table));
    tree.put("first", time.first);
    tree.put("last", time.last);
    tree.put("interval", time.reader().steps.usual());
    return tree;
  }

  private Map<String, Object> tree(LogColumn column) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("column", column.word);
    tree.put("filled", column.filled);
    tree.put("numbers", column.numbers);
    column.lowest().ifPresent(lowest -> tree.put("lowest", lowest));
    column.highest().ifPresent(highest -> tree.put("highest", highest));
    if (!column.others.isEmpty() && !scan.isOfTime(column)) {
      tree.put("others", column.others);
    }
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

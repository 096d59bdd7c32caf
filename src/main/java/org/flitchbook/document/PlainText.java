package org.flitchbook.document;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Block.Sum;
import org.flitchbook.words.Words;

/** Prints a document for a terminal. */
final class PlainText {
  private static final int SIGNING_LINE = 28;
  private static final Table.Column LABEL = new Table.Column("label", Table.Align.LEFT, 1, true);
  private static final Table.Column VALUE = new Table.Column("value", Table.Align.LEFT, 3, false);
  private static final Table.Column EXPRESSION =
      new Table.Column("expression", Table.Align.RIGHT, 2, false);
  private static final Table.Column EQUALS = new Table.Column("equals", Table.Align.LEFT, 0, false);

  private final Words words;
  private final int width;
  private final StringBuilder out = new StringBuilder();

  PlainText(Words words, int width) {
    this.words = words;
    this.width = width;
  }

  String print(Document document) {
    Document.Running running = document.running();
    underlined(document.title(), "═");
    wrapped(document.subject());
    wrapped(joined(running.left(), running.right()));
    document.code().ifPresent(code -> code.lines().forEach(this::wrapped));
    document.blocks().forEach(this::print);
    gap();
    wrapped(joined(running.footLeft(), running.footRight()));
    return out.toString().stripTrailing() + "\n";
  }

  private static String joined(String... parts) {
    return Stream.of(parts).filter(part -> !part.isBlank()).collect(Collectors.joining(" · "));
  }

  private void print(Block block) {
    gap();
    if (block instanceof Block.Heading heading) {
      underlined(heading.text(), List.of("═", "─", "·").get(heading.level() - 1));
    } else if (block instanceof Block.Paragraph paragraph) {
      wrapped(words(paragraph.text()));
    } else if (block instanceof Block.Note note) {
      wrapped(words(note.text()));
    } else if (block instanceof Block.Caution caution) {
      hanging("! ", caution.text());
    } else if (block instanceof Block.Banner banner) {
      banner(banner);
    } else if (block instanceof Block.PageBreak) {
      line("─".repeat(width));
    } else {
      printGrid(block);
    }
  }

  private void printGrid(Block block) {
    if (block instanceof Facts facts) {
      grid(
          List.of(LABEL, VALUE),
          facts.facts().stream().map(fact -> List.of(fact.label(), words(fact.value()))));
    } else if (block instanceof Sum sum) {
      grid(List.of(LABEL, EXPRESSION, EQUALS, VALUE), sum.lines().stream().map(PlainText::cells));
    } else if (block instanceof Table table) {
      table(table);
    } else if (block instanceof Chart chart) {
      wrapped(chart.caption());
      hanging(words.say("document.chart", "[chart]") + " ", chart.alternative());
    } else if (block instanceof Block.Blank blank) {
      blank(blank);
    } else if (block instanceof Signatures signatures) {
      signatures.boxes().forEach(this::signature);
    } else {
      throw new IllegalArgumentException("no form as text for " + block.getClass());
    }
  }

  private static List<String> cells(Sum.Line line) {
    String equals = line.expression().isBlank() ? "" : "=";
    return List.of(line.label(), line.expression(), equals, line.result());
  }

  private void grid(List<Table.Column> columns, Stream<List<String>> rows) {
    List<List<String>> stripped =
        rows.map(row -> row.stream().map(String::strip).toList()).toList();
    new TextGrid(columns, stripped, width).lines().forEach(row -> row.forEach(this::line));
  }

  private void blank(Block.Blank blank) {
    wrapped(blank.label());
    for (int i = 0; i < blank.lines(); i++) {
      line("_".repeat(width));
    }
    blank.slots().forEach(slot -> line(slot + " " + "_".repeat(SIGNING_LINE)));
  }

  private void banner(Block.Banner banner) {
    line("─".repeat(width));
    wrapped((banner.tone().symbol() + " " + banner.words()).strip());
    wrapped(banner.sentence());
    line("─".repeat(width));
  }

  private void table(Table table) {
    wrapped(table.caption());
    List<String> heads = table.columns().stream().map(Table.Column::head).toList();
    List<List<String>> rows = new ArrayList<>();
    rows.add(heads);
    table.rows().forEach(row -> rows.add(row.cells().stream().map(this::words).toList()));
    TextGrid grid = new TextGrid(table.columns(), rows, width);
    if (grid.fits()) {
      List<List<String>> lines = grid.lines();
      lines.get(0).forEach(this::line);
      line(grid.rule(lines.get(0)));
      lines.stream().skip(1).forEach(row -> row.forEach(this::line));
    } else {
      rows.stream().skip(1).forEach(row -> rowByRow(heads, row));
    }
  }

  /** A row of a table too wide for the terminal: a line for each cell, under its column's head. */
  private void rowByRow(List<String> heads, List<String> row) {
    line("─".repeat(SIGNING_LINE));
    grid(
        List.of(LABEL, VALUE),
        IntStream.range(0, heads.size()).mapToObj(i -> List.of(heads.get(i), row.get(i))));
  }

  private void signature(Signatures.Box box) {
    String signingLine = "_".repeat(SIGNING_LINE);
    wrapped(box.role());
    wrapped(box.statement());
    List<String> labels =
        Stream.of(
                say("document.signature", "Signature"),
                say("document.name", "Name"),
                say("document.date", "Date"))
            .map(label -> label.in(words))
            .toList();
    String time = words.say("document.time", "Time");
    String name = box.name().isBlank() ? signingLine : Text.printable(box.name());
    List<String> values = List.of(signingLine, name, "____________  " + time + "  _______");
    int widest = labels.stream().mapToInt(String::length).max().orElse(0);
    for (int i = 0; i < labels.size(); i++) {
      String label = labels.get(i);
      line(label + " ".repeat(widest + 2 - label.length()) + values.get(i));
    }
    gap();
  }

  /** The words of a cell, its symbol in front. */
  private String words(Table.Cell cell) {
    return cell.scale()
        .map(Table.Scale::drawn)
        .orElseGet(() -> (cell.tone().symbol() + " " + words(cell.text())).strip());
  }

  /** The words of a text. What is struck out says so, since a terminal may not strike. */
  private String words(Text text) {
    return text.spans().stream().map(this::words).collect(Collectors.joining());
  }

  private String words(Text.Span span) {
    boolean struck = span.style() == Text.Style.STRUCK;
    return struck ? words.say("document.struck", "[struck out: {0}]", span.text()) : span.text();
  }

  private void underlined(String text, String mark) {
    List<String> lines = TextGrid.wrap(text, width);
    lines.forEach(this::line);
    line(mark.repeat(lines.stream().mapToInt(TextGrid::length).max().orElse(0)));
  }

  private void wrapped(String text) {
    if (!text.isBlank()) {
      TextGrid.wrap(text, width).forEach(this::line);
    }
  }

  private void hanging(String mark, String text) {
    String lead = mark;
    for (String line : TextGrid.wrap(text, width - mark.length())) {
      line(lead + line);
      lead = " ".repeat(mark.length());
    }
  }

  private void line(String text) {
    out.append(text.stripTrailing()).append('\n');
  }

  private void gap() {
    if (!out.isEmpty() && out.lastIndexOf("\n\n") != out.length() - 2) {
      out.append('\n');
    }
  }
}

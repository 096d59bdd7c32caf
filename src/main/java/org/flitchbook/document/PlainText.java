package org.flitchbook.document;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.message.Message;
import org.flitchbook.words.Words;

/** Prints a document for a terminal. */
final class PlainText {
  private static final int SIGNING_LINE = 28;

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
      wrapped(words(paragraph.text(), words));
    } else if (block instanceof Block.Note note) {
      wrapped(words(note.text(), words));
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
      plainGrid(PlainGrids.of(facts));
    } else if (block instanceof Sum sum) {
      plainGrid(PlainGrids.of(sum));
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

  private void plainGrid(Table table) {
    new TextGrid(table, words, width, false).rowLines().forEach(this::line);
  }

  private void table(Table table) {
    wrapped(table.caption());
    TextGrid grid = new TextGrid(table, words, width, true);
    if (grid.fits()) {
      grid.headLines().forEach(this::line);
      grid.rowLines().forEach(this::line);
    } else {
      table.rows().forEach(row -> rowByRow(table.columns(), row));
    }
  }

  private void rowByRow(List<Table.Column> columns, Table.Row row) {
    line("─".repeat(SIGNING_LINE));
    plainGrid(PlainGrids.of(columns, row));
  }

  private void signature(Signatures.Box box) {
    String signingLine = "_".repeat(SIGNING_LINE);
    wrapped(box.role());
    wrapped(box.statement());
    String name = box.name().isBlank() ? signingLine : Text.printable(box.name());
    line(label(say("document.signature", "Signature")) + signingLine);
    line(label(say("document.name", "Name")) + name);
    line(
        label(say("document.date", "Date"))
            + "____________  "
            + words.say("document.time", "Time")
            + "  _______");
    gap();
  }

  /** As wide as the widest of the labels below each other. */
  private String label(Message text) {
    int widest =
        Stream.of(
                say("document.signature", "Signature"),
                say("document.name", "Name"),
                say("document.date", "Date"))
            .mapToInt(each -> each.in(words).length())
            .max()
            .orElse(0);
    String label = text.in(words);
    return label + " ".repeat(widest + 2 - label.length());
  }

  /** The words of a cell, its symbol in front. */
  static String words(Table.Cell cell, Words words) {
    if (cell.scale().isPresent()) {
      return cell.scale().get().drawn();
    }
    return (cell.tone().symbol() + " " + words(cell.text(), words)).strip();
  }

  /** The words of a text. What is struck out says so, since a terminal may not strike. */
  private static String words(Text text, Words words) {
    return text.spans().stream().map(span -> words(span, words)).collect(Collectors.joining());
  }

  private static String words(Text.Span span, Words words) {
    boolean struck = span.style() == Text.Style.STRUCK;
    return struck ? words.say("document.struck", "[struck out: {0}]", span.text()) : span.text();
  }

  private void underlined(String text, String mark) {
    List<String> lines = TextLines.wrap(text, width);
    lines.forEach(this::line);
    line(mark.repeat(lines.stream().mapToInt(TextLines::length).max().orElse(0)));
  }

  private void wrapped(String text) {
    if (!text.isBlank()) {
      TextLines.wrap(text, width).forEach(this::line);
    }
  }

  private void hanging(String mark, String text) {
    String lead = mark;
    for (String line : TextLines.wrap(text, width - mark.length())) {
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

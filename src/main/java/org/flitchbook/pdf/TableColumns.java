package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;

/** The columns of a table: how wide they are, and the text of a row in them. */
final class TableColumns {
  private static final double GAP = 9;

  /** Between a column set to the right and one set to the left, which would else run together. */
  private static final double WIDE_GAP = 17;

  /** No word may claim more of the page than this; a longer one is cut. */
  private static final double LONGEST_WORD = 0.3;

  private final Flow flow;
  private final Table table;
  private final double[] widths;

  TableColumns(Flow flow, Table table) {
    this.flow = flow;
    this.table = table;
    this.widths = measure();
  }

  private double[] measure() {
    int count = table.columns().size();
    double[] least = new double[count];
    double[] natural = new double[count];
    double room = flow.frame.width();
    for (int i = 0; i < count; i++) {
      room -= i < count - 1 ? gap(i) : 0;
      widen(least, natural, i, FontSize.SMALL, heads().get(i));
      for (Table.Row row : table.rows()) {
        widen(least, natural, i, FontSize.BODY, row.cells().get(i));
      }
    }
    double longest = Math.max(room * LONGEST_WORD, room / count);
    Arrays.setAll(least, i -> Math.min(least[i], longest));
    return table.share(room, least, natural);
  }

  private double gap(int column) {
    boolean facing =
        column + 1 < table.columns().size()
            && table.columns().get(column).align() == Table.Align.RIGHT
            && table.columns().get(column + 1).align() == Table.Align.LEFT;
    return facing ? WIDE_GAP : GAP;
  }

  private void widen(double[] least, double[] natural, int column, FontSize size, Table.Cell cell) {
    LineBreaker text = flow.text.of(size, text(cell));
    double whole = cell.scale().isPresent() ? TableRow.SCALE_WIDTH : text.natural();
    natural[column] = Math.max(natural[column], whole);
    if (whole > least[column]) {
      double word = cell.scale().isPresent() ? TableRow.SCALE_WIDTH : text.least();
      least[column] = Math.max(least[column], word);
    }
  }

  private List<Table.Cell> heads() {
    return table.columns().stream()
        .map(column -> new Table.Cell(Text.strong(column.head()), Tone.PLAIN))
        .toList();
  }

  /** The row of heads; each belongs to the owner of its number. */
  TableRow head(IntFunction<Pen.Owner> owners) {
    return row(FontSize.SMALL, heads(), owners);
  }

  /** A row of cells, each of which belongs to the owner of its number. */
  TableRow row(FontSize size, List<Table.Cell> cells, IntFunction<Pen.Owner> owners) {
    List<TableRow.Field> fields = new ArrayList<>();
    double x = flow.frame.left();
    for (int i = 0; i < widths.length; i++) {
      Table.Cell cell = cells.get(i);
      Pen.Owner owner = owners.apply(i);
      fields.add(
          cell.scale().isPresent() && owner instanceof Element element
              ? scale(element, x, widths[i], cell)
              : field(owner, x, i, size, cell));
      x += widths[i] + gap(i);
    }
    return new TableRow(size, fields, true, true);
  }

  private TableRow.Field field(
      Pen.Owner owner, double x, int column, FontSize size, Table.Cell cell) {
    // A hundredth of a point more, so that what was measured unbroken is not broken by rounding.
    List<TextLine> lines = flow.text.of(size, text(cell)).balanced(widths[column] + 0.01);
    Table.Align align = table.columns().get(column).align();
    return new TableRow.Field(
        owner, x, widths[column], align, cell.tone(), lines, Optional.empty());
  }

  /** The scale alone is drawn; its words are read out in its place. */
  private static TableRow.Field scale(Element element, double x, double width, Table.Cell cell) {
    return new TableRow.Field(
        element.child("Figure").alternative(cell.text().plain()),
        x,
        Math.min(width, TableRow.SCALE_WIDTH),
        Table.Align.LEFT,
        cell.tone(),
        List.of(),
        cell.scale());
  }

  /** The words of a cell, its symbol in front; strong where the reader must stop. */
  private static Text text(Table.Cell cell) {
    if (cell.tone() == Tone.PLAIN) {
      return cell.text();
    }
    boolean loud = cell.tone() == Tone.FAIL || cell.tone() == Tone.DOUBT;
    List<Text.Span> spans = new ArrayList<>();
    spans.add(new Text.Span(cell.tone().symbol() + "\u00a0", Text.Style.STRONG));
    for (Text.Span span : cell.text().spans()) {
      boolean plain = span.style() == Text.Style.PLAIN;
      spans.add(
          loud && plain ? new Text.Span(span.text(), Text.Style.STRONG, span.target()) : span);
    }
    return new Text(spans);
  }
}

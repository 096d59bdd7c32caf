package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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

  private final LayoutContext context;
  private final Table table;
  private final double[] widths;

  TableColumns(LayoutContext context, Table table) {
    this.context = context;
    this.table = table;
    this.widths = measure();
  }

  private double[] measure() {
    int count = table.columns().size();
    double[] least = new double[count];
    double[] natural = new double[count];
    double room = context.frame().width();
    for (int i = 0; i < count; i++) {
      room -= i < count - 1 ? gap(i) : 0;
      widen(least, natural, i, FontSize.SMALL, Text.strong(table.columns().get(i).head()));
      for (Table.Row row : table.rows()) {
        widen(least, natural, i, row.cells().get(i));
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

  private void widen(double[] least, double[] natural, int column, Table.Cell cell) {
    if (cell.scale().isPresent()) {
      least[column] = Math.max(least[column], TableRow.SCALE_WIDTH);
      natural[column] = Math.max(natural[column], TableRow.SCALE_WIDTH);
    } else {
      widen(least, natural, column, FontSize.BODY, text(cell));
    }
  }

  private void widen(double[] least, double[] natural, int column, FontSize size, Text text) {
    double whole = context.text().natural(size, text);
    natural[column] = Math.max(natural[column], whole);
    if (whole > least[column]) {
      least[column] = Math.max(least[column], context.text().least(size, text));
    }
  }

  TableRow head(List<Owner> owners) {
    List<TableRow.Field> fields = new ArrayList<>();
    double x = context.frame().left();
    for (int i = 0; i < widths.length; i++) {
      Table.Column column = table.columns().get(i);
      fields.add(
          field(owners.get(i), x, i, FontSize.SMALL, Text.strong(column.head()), Tone.PLAIN));
      x += widths[i] + gap(i);
    }
    return new TableRow(FontSize.SMALL, fields);
  }

  TableRow row(Table.Row row, List<Owner> owners) {
    List<TableRow.Field> fields = new ArrayList<>();
    double x = context.frame().left();
    for (int i = 0; i < widths.length; i++) {
      Table.Cell cell = row.cells().get(i);
      fields.add(
          cell.scale().isPresent()
              ? scale(owners.get(i), x, i, cell)
              : field(owners.get(i), x, i, FontSize.BODY, text(cell), cell.tone()));
      x += widths[i] + gap(i);
    }
    return new TableRow(FontSize.BODY, fields);
  }

  private TableRow.Field field(
      Owner owner, double x, int column, FontSize size, Text text, Tone tone) {
    // A hundredth of a point more, so that what was measured unbroken is not broken by rounding.
    List<TextLine> lines = context.text().balanced(size, text, widths[column] + 0.01);
    Table.Align align = table.columns().get(column).align();
    return new TableRow.Field(owner, x, widths[column], align, tone, lines, Optional.empty());
  }

  /** The scale alone is drawn; its words are read out in its place. */
  private TableRow.Field scale(Owner owner, double x, int column, Table.Cell cell) {
    Owner figure =
        owner instanceof Element element
            ? element.child("Figure").alternative(cell.text().plain())
            : owner;
    double width = Math.min(widths[column], TableRow.SCALE_WIDTH);
    return new TableRow.Field(
        figure, x, width, Table.Align.LEFT, cell.tone(), List.of(), cell.scale());
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

package org.flitchbook.pdf;

import java.io.IOException;
import java.util.List;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;

/** Sets a table: rules above, below and under the head, hairlines between the rows. */
final class TableSetter {
  private static final double STRONG_RULE = 0.8;

  /** A table of no more rows is kept on one page. */
  private static final int SMALL_TABLE = 8;

  /** Lines in each part of a row that is taller than a page. */
  private static final int PART = 8;

  private final Flow flow;
  private final Table table;
  private final boolean leads;
  private final TableColumns columns;
  private final Element element;

  /**
   * @param leads whether its last rows must stand on the page of what follows
   */
  TableSetter(Flow flow, Table table, boolean leads) {
    this.flow = flow;
    this.table = table;
    this.leads = leads;
    this.columns = new TableColumns(flow, table);
    this.element = flow.root.child("Table");
  }

  void set() throws IOException {
    if (!table.caption().isBlank()) {
      TextSetter.caption(flow, element.child("Caption"), table.caption());
    }
    flow.add(head());
    List<Table.Row> rows = table.rows();
    Element body = rows.isEmpty() ? element : element.child("TBody");
    Flow.Strip again = again();
    for (int i = 0; i < rows.size(); i++) {
      boolean last = i == rows.size() - 1;
      addRow(body.child("TR"), rows.get(i), sticks(i), last, again);
    }
  }

  private boolean sticks(int row) {
    int rows = table.rows().size();
    return row == rows - 1 ? leads : rows <= SMALL_TABLE || row == 0 || row == rows - 2;
  }

  private Flow.Strip head() {
    Element row = element.child("THead").child("TR");
    double before = table.caption().isBlank() ? 12 : 4;
    TableColumns.Row heads = columns.head(column -> row.child("TH").scope("Column"));
    return headStrip(before, heads, !table.rows().isEmpty());
  }

  /** The head on a further page. A reader of the structure tree has read it already. */
  private Flow.Strip again() {
    Flow.Strip head = headStrip(0, columns.head(column -> Pen.Artifact.DECORATION), true);
    if (table.caption().isBlank()) {
      return head;
    }
    String words = flow.words.say("pdf.continued", "{0} (continued)", table.caption());
    List<TextLine> caption =
        flow.text.lines(FontSize.SMALL, Text.Style.MUTED, words, flow.frame.width());
    double down = TextLine.height(caption) + 4;
    Pen.Drawing drawing =
        (pen, top) -> {
          pen.decoration().lines(flow.frame.left(), top, caption);
          head.drawing().draw(pen, top + down);
        };
    return new Flow.Strip(0, head.height() + down, true, null, drawing);
  }

  private Flow.Strip headStrip(double before, TableColumns.Row row, boolean sticks) {
    Pen.Drawing drawing =
        (pen, top) -> {
          rule(pen, STRONG_RULE, Color.BLACK, top);
          row.draw(pen, top);
          rule(pen, 0.5, Color.BLACK, top + row.height());
        };
    return new Flow.Strip(before, row.height(), sticks, null, drawing);
  }

  private void addRow(
      Element element, Table.Row cells, boolean sticks, boolean last, Flow.Strip again)
      throws IOException {
    TableColumns.Row row =
        columns.row(FontSize.BODY, cells.cells(), column -> cell(element, column));
    if (row.height() <= flow.frame.height() - again.height()) {
      add(row, sticks, last, again);
      return;
    }
    // Taller than a page: the only row that may be cut, between two lines.
    for (int from = 0; from < row.lines(); from += PART) {
      add(row.part(from, from + PART), false, last, again);
    }
  }

  private void add(TableColumns.Row row, boolean sticks, boolean last, Flow.Strip again)
      throws IOException {
    Pen.Drawing drawing =
        (pen, top) -> {
          row.draw(pen, top);
          if (row.ends()) {
            double weight = last ? STRONG_RULE : 0.35;
            rule(pen, weight, last ? Color.BLACK : Color.HAIR, top + row.height());
          }
        };
    flow.add(new Flow.Strip(0, row.height(), sticks, again, drawing));
  }

  private Element cell(Element row, int column) {
    boolean head = table.columns().get(column).rowHead();
    return head ? row.child("TH").scope("Row") : row.child("TD");
  }

  private void rule(Pen pen, double weight, Color color, double y) throws IOException {
    Rectangle frame = flow.frame;
    pen.decoration().rule(color, weight, frame.left(), y, frame.right(), y);
  }
}

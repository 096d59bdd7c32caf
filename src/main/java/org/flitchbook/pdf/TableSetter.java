package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.jspecify.annotations.Nullable;

/** Sets a table: rules above, below and under the head, hairlines between the rows. */
final class TableSetter {
  private static final double STRONG_RULE = 0.8;

  /** A table of no more rows is kept on one page. */
  private static final int SMALL_TABLE = 8;

  /** Lines in each part of a row that is taller than a page. */
  private static final int PART = 8;

  private final Press press;
  private final Table table;
  private final boolean leads;
  private final TableColumns columns;
  private final Element element;

  /**
   * @param leads whether its last rows must stand on the page of what follows
   */
  TableSetter(Press press, Table table, boolean leads) {
    this.press = press;
    this.table = table;
    this.leads = leads;
    this.columns = new TableColumns(press, table);
    this.element = press.root().child("Table");
  }

  void set() throws IOException {
    if (!table.caption().isBlank()) {
      WordSetter.caption(press, element.child("Caption"), table.caption());
    }
    press.flow().add(head());
    List<Table.Row> rows = table.rows();
    Element body = rows.isEmpty() ? element : element.child("TBody");
    Strip again = again();
    for (int i = 0; i < rows.size(); i++) {
      boolean last = i == rows.size() - 1;
      addRow(body.child("TR"), rows.get(i), sticks(i), last, again);
    }
  }

  private boolean sticks(int row) {
    int rows = table.rows().size();
    return row == rows - 1 ? leads : rows <= SMALL_TABLE || row == 0 || row == rows - 2;
  }

  private Strip head() {
    Element row = element.child("THead").child("TR");
    List<Owner> owners = new ArrayList<>();
    table.columns().forEach(column -> owners.add(row.child("TH").scope("Column")));
    double before = table.caption().isBlank() ? 12 : 4;
    return headStrip(before, owners, !table.rows().isEmpty());
  }

  /** The head on a further page. A reader of the structure tree has read it already. */
  private Strip again() {
    List<Owner> owners = new ArrayList<>();
    table.columns().forEach(column -> owners.add(Artifact.DECORATION));
    Strip head = headStrip(0, owners, true);
    if (table.caption().isBlank()) {
      return head;
    }
    List<Line> caption = continued();
    double down = caption.size() * Type.SMALL.leading + 4;
    Drawing drawing =
        (pen, top) -> {
          for (int i = 0; i < caption.size(); i++) {
            double y = top + i * Type.SMALL.leading;
            pen.line(Artifact.DECORATION, Type.SMALL, press.frame().left(), y, caption.get(i));
          }
          head.drawing().draw(pen, top + down);
        };
    return Strip.of(0, head.height() + down, true, drawing);
  }

  private List<Line> continued() {
    String words = press.words().say("pdf.continued", "{0} (continued)", table.caption());
    return press.setting().lines(Type.SMALL, Text.Style.MUTED, words, press.frame().width());
  }

  private Strip headStrip(double before, List<Owner> owners, boolean sticks) {
    TableRow row = columns.head(owners);
    Drawing drawing =
        (pen, top) -> {
          rule(pen, STRONG_RULE, Ink.BLACK, top);
          row.draw(pen, top);
          rule(pen, 0.5, Ink.BLACK, top + row.height());
        };
    return Strip.of(before, row.height(), sticks, drawing);
  }

  private void addRow(Element element, Table.Row cells, boolean sticks, boolean last, Strip again)
      throws IOException {
    TableRow row = columns.row(cells, owners(element, cells));
    if (row.height() <= press.frame().height() - again.height()) {
      add(row, sticks, last, again);
      return;
    }
    // Taller than a page: the only row that may be cut, between two lines.
    for (int from = 0; from < row.lines(); from += PART) {
      add(row.part(from, from + PART), false, last, again);
    }
  }

  private void add(TableRow row, boolean sticks, boolean last, @Nullable Strip again)
      throws IOException {
    Drawing drawing =
        (pen, top) -> {
          row.draw(pen, top);
          if (row.ends()) {
            double weight = last ? STRONG_RULE : 0.35;
            rule(pen, weight, last ? Ink.BLACK : Ink.HAIR, top + row.height());
          }
        };
    press.flow().add(new Strip(0, row.height(), sticks, again, drawing));
  }

  private List<Owner> owners(Element row, Table.Row cells) {
    List<Owner> owners = new ArrayList<>();
    List<Table.Cell> all = cells.cells();
    for (int i = 0; i < all.size(); i++) {
      boolean head = table.columns().get(i).rowHead();
      owners.add(head ? row.child("TH").scope("Row") : row.child("TD"));
    }
    return owners;
  }

  private void rule(Pen pen, double weight, Ink ink, double y) throws IOException {
    Frame frame = press.frame();
    pen.rule(Artifact.DECORATION, ink, weight, frame.left(), y, frame.right(), y);
  }
}

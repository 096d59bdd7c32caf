package org.flitchbook.document;

import java.util.ArrayList;
import java.util.List;

/** Facts, sums and single rows as tables, so that one grid aligns them all on a terminal. */
final class PlainGrids {
  private static final Column LABEL = new Column("label", Align.LEFT, 1, true);
  private static final Column VALUE = new Column("value", Align.LEFT, 3, false);
  private static final Column EXPRESSION = new Column("expression", Align.RIGHT, 2, false);

  private static final Column EQUALS = new Column("equals", Align.LEFT, 0, false);

  private PlainGrids() {}

  static Table of(Facts facts) {
    List<Row> rows = new ArrayList<>();
    facts.facts().forEach(fact -> rows.add(row(Text.of(fact.label()), fact.value())));
    return new Table("", List.of(LABEL, VALUE), rows);
  }

  static Table of(Sum sum) {
    List<Row> rows = new ArrayList<>();
    for (Sum.Line line : sum.lines()) {
      Text equals = Text.of(line.expression().isBlank() ? "" : "=");
      Text expression = Text.of(line.expression());
      rows.add(row(Text.of(line.label()), expression, equals, Text.of(line.result())));
    }
    return new Table("", List.of(LABEL, EXPRESSION, EQUALS, VALUE), rows);
  }

  /** A row of a table too wide for the terminal: a line for each cell, under its column's head. */
  static Table of(List<Column> columns, Row row) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      Cell head = new Cell(Text.of(columns.get(i).head()), Tone.PLAIN);
      rows.add(new Row(List.of(head, row.cells().get(i))));
    }
    return new Table("", List.of(LABEL, VALUE), rows);
  }

  private static Row row(Text... texts) {
    List<Cell> cells = new ArrayList<>();
    for (Text text : texts) {
      cells.add(new Cell(text, Tone.PLAIN));
    }
    return new Row(cells);
  }
}

package org.flitchbook.document;

import java.util.ArrayList;
import java.util.List;

/** Facts, sums and single rows as tables, so that one grid aligns them all on a terminal. */
final class PlainGrids {
  private static final Table.Column LABEL = new Table.Column("label", Table.Align.LEFT, 1, true);
  private static final Table.Column VALUE = new Table.Column("value", Table.Align.LEFT, 3, false);
  private static final Table.Column EXPRESSION =
      new Table.Column("expression", Table.Align.RIGHT, 2, false);

  private static final Table.Column EQUALS = new Table.Column("equals", Table.Align.LEFT, 0, false);

  private PlainGrids() {}

  static Table of(Facts facts) {
    List<Table.Row> rows = new ArrayList<>();
    facts.facts().forEach(fact -> rows.add(row(Text.of(fact.label()), fact.value())));
    return new Table("", List.of(LABEL, VALUE), rows);
  }

  static Table of(Sum sum) {
    List<Table.Row> rows = new ArrayList<>();
    for (Sum.Line line : sum.lines()) {
      Text equals = Text.of(line.expression().isBlank() ? "" : "=");
      Text expression = Text.of(line.expression());
      rows.add(row(Text.of(line.label()), expression, equals, Text.of(line.result())));
    }
    return new Table("", List.of(LABEL, EXPRESSION, EQUALS, VALUE), rows);
  }

  /** A row of a table too wide for the terminal: a line for each cell, under its column's head. */
  static Table of(List<Table.Column> columns, Table.Row row) {
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      Table.Cell head = new Table.Cell(Text.of(columns.get(i).head()), Tone.PLAIN);
      rows.add(new Table.Row(List.of(head, row.cells().get(i))));
    }
    return new Table("", List.of(LABEL, VALUE), rows);
  }

  private static Table.Row row(Text... texts) {
    List<Table.Cell> cells = new ArrayList<>();
    for (Text text : texts) {
      cells.add(new Table.Cell(text, Tone.PLAIN));
    }
    return new Table.Row(cells);
  }
}

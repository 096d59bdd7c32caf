package org.flitchbook.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.flitchbook.document.Align;
import org.flitchbook.document.Cell;
import org.flitchbook.document.Column;
import org.flitchbook.document.Row;
import org.flitchbook.document.Table;
import org.flitchbook.document.Tone;

/** A table while its columns and rows are being put together. */
final class Grid {

  private final String caption;
  private final List<Column> columns = new ArrayList<>();
  private final List<Row> rows = new ArrayList<>();

  Grid(String caption) {
    this.caption = caption;
  }

  Grid head(String name, int weight) {
    columns.add(new Column(name, Align.LEFT, weight, columns.isEmpty()));
    return this;
  }

  Grid number(String name, int weight) {
    columns.add(new Column(name, Align.RIGHT, weight, columns.isEmpty()));
    return this;
  }

  Grid row(Cell... cells) {
    rows.add(new Row(Arrays.asList(cells)));
    return this;
  }

  Grid row(String... cells) {
    rows.add(new Row(Arrays.stream(cells).map(Grid::cell).toList()));
    return this;
  }

  boolean isEmpty() {
    return rows.isEmpty();
  }

  Table table() {
    return new Table(caption, columns, rows);
  }

  static Cell cell(String text) {
    return new Cell(Bound.of(text), Tone.PLAIN);
  }

  static Cell cell(String text, Tone tone) {
    return new Cell(Bound.of(text), tone);
  }

  static Cell muted(String text) {
    return new Cell(Bound.muted(text), Tone.PLAIN);
  }

  /** An empty field is never left blank. */
  static String orNotRecorded(String text) {
    return text.isEmpty() ? Phrases.NOT_RECORDED : text;
  }
}

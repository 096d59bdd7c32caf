package org.flitchbook.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;

/** A table while its columns and rows are being put together. */
final class Grid {

  private static final int NONE = -1;

  private final Phrases phrases;
  private final String caption;
  private final List<Table.Column> columns = new ArrayList<>();
  private final List<Table.Row> rows = new ArrayList<>();
  private int where = NONE;

  Grid(Phrases phrases, String caption) {
    this.phrases = phrases;
    this.caption = caption;
  }

  /** A column of words; its head by key. */
  Grid head(String id, String english, int weight) {
    where = id.equals("record.head.where") ? columns.size() : where;
    columns.add(
        new Table.Column(phrases.say(id, english), Table.Align.LEFT, weight, columns.isEmpty()));
    return this;
  }

  /** A column of numbers; its head by key. */
  Grid number(String id, String english, int weight) {
    return numbers(phrases.say(id, english), weight);
  }

  /** A column of numbers under a head that is worded already. */
  Grid numbers(String head, int weight) {
    columns.add(new Table.Column(head, Table.Align.RIGHT, weight, columns.isEmpty()));
    return this;
  }

  Grid row(Table.Cell... cells) {
    rows.add(new Table.Row(Arrays.asList(cells)));
    return this;
  }

  /** A row of words; where each stands in its file is muted. */
  Grid row(String... cells) {
    List<Table.Cell> row = new ArrayList<>();
    for (String each : cells) {
      row.add(row.size() == where ? muted(each) : cell(each));
    }
    rows.add(new Table.Row(row));
    return this;
  }

  boolean isEmpty() {
    return rows.isEmpty();
  }

  Table table() {
    return new Table(caption, columns, rows);
  }

  Table.Cell cell(String text) {
    return new Table.Cell(phrases.bound().of(text), Tone.PLAIN);
  }

  Table.Cell leading(String text, Text.Target target) {
    return new Table.Cell(phrases.bound().leading(text, target), Tone.PLAIN);
  }

  Table.Cell muted(String text) {
    return new Table.Cell(phrases.bound().muted(text), Tone.PLAIN);
  }
}

package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Align;
import org.flitchbook.document.Block;
import org.flitchbook.document.Cell;
import org.flitchbook.document.Column;
import org.flitchbook.document.Row;
import org.flitchbook.document.Style;
import org.flitchbook.document.Table;
import org.flitchbook.document.Target;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.message.Message;

/**
 * A table put together column by column: under each head what stands there of every item.
 *
 * @param <T> what a row is about
 */
final class TableBuilder<T> {

  private final Phrases phrases;
  private final String caption;
  private final List<T> items;
  private final List<Column> columns = new ArrayList<>();
  private final List<Function<T, Cell>> cells = new ArrayList<>();

  TableBuilder(Phrases phrases, String caption, List<T> items) {
    this.phrases = phrases;
    this.caption = caption;
    this.items = items;
  }

  /** A column of words. */
  TableBuilder<T> column(Message head, int weight, Function<T, String> text) {
    return cells(head, Align.LEFT, weight, item -> plain(text.apply(item), Style.PLAIN));
  }

  TableBuilder<T> column(String id, String english, int weight, Function<T, String> text) {
    return column(Message.say(id, english), weight, text);
  }

  /** A column of numbers. */
  TableBuilder<T> number(Message head, int weight, Function<T, String> text) {
    return cells(head, Align.RIGHT, weight, item -> plain(text.apply(item), Style.PLAIN));
  }

  TableBuilder<T> number(String id, String english, int weight, Function<T, String> text) {
    return number(Message.say(id, english), weight, text);
  }

  /** Where each item stands in its file. */
  TableBuilder<T> where(int weight, Function<T, String> place) {
    return cells(Section.WHERE, Align.LEFT, weight, i -> plain(place.apply(i), Style.MUTED));
  }

  TableBuilder<T> verdict(int weight, Function<T, Verdict> verdict) {
    return cells(Section.VERDICT, Align.LEFT, weight, item -> cell(verdict.apply(item)));
  }

  private Cell cell(Verdict verdict) {
    return new Cell(phrases.text(phrases.say(verdict), Style.PLAIN), Phrases.tone(verdict));
  }

  /** A column of words that lead to the record of a lot. */
  TableBuilder<T> record(Message head, int weight, Function<T, String> lot) {
    return cells(head, Align.LEFT, weight, item -> leading(lot.apply(item)));
  }

  private static Cell leading(String lot) {
    return new Cell(Text.leading(lot, new Target.File(lot + ".pdf")), Tone.PLAIN);
  }

  /** A column of cells that are laid out already. */
  TableBuilder<T> cells(Message head, Align align, int weight, Function<T, Cell> cell) {
    columns.add(new Column(phrases.say(head), align, weight, columns.isEmpty()));
    cells.add(cell);
    return this;
  }

  private Cell plain(String text, Style style) {
    return new Cell(phrases.text(text, style), Tone.PLAIN);
  }

  /** The table; empty where it has no row. */
  Optional<Block> ifAny() {
    return items.isEmpty() ? Optional.empty() : Optional.of(table());
  }

  /** The table, or another block where it has no row. */
  Block or(Block instead) {
    return ifAny().orElse(instead);
  }

  Table table() {
    return new Table(caption, columns, items.stream().map(this::row).toList());
  }

  private Row row(T item) {
    return new Row(cells.stream().map(cell -> cell.apply(item)).toList());
  }
}

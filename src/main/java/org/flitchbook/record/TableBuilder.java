package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
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
  private final List<Table.Column> columns = new ArrayList<>();
  private final List<Function<T, Table.Cell>> cells = new ArrayList<>();

  TableBuilder(Phrases phrases, String caption, List<T> items) {
    this.phrases = phrases;
    this.caption = caption;
    this.items = items;
  }

  /** A column of words. */
  TableBuilder<T> column(Message head, int weight, Function<T, String> text) {
    return cells(head, Table.Align.LEFT, weight, item -> plain(text.apply(item), Text.Style.PLAIN));
  }

  TableBuilder<T> column(String id, String english, int weight, Function<T, String> text) {
    return column(Message.say(id, english), weight, text);
  }

  /** A column of numbers. */
  TableBuilder<T> number(Message head, int weight, Function<T, String> text) {
    return cells(
        head, Table.Align.RIGHT, weight, item -> plain(text.apply(item), Text.Style.PLAIN));
  }

  TableBuilder<T> number(String id, String english, int weight, Function<T, String> text) {
    return number(Message.say(id, english), weight, text);
  }

  /** Where each item stands in its file. */
  TableBuilder<T> where(int weight, Function<T, String> place) {
    return cells(
        Section.WHERE, Table.Align.LEFT, weight, i -> plain(place.apply(i), Text.Style.MUTED));
  }

  TableBuilder<T> verdict(int weight, Function<T, Verdict> verdict) {
    return cells(Section.VERDICT, Table.Align.LEFT, weight, item -> cell(verdict.apply(item)));
  }

  private Table.Cell cell(Verdict verdict) {
    return new Table.Cell(
        phrases.text(phrases.say(verdict), Text.Style.PLAIN), Phrases.tone(verdict));
  }

  /** A column of words that lead to the record of a lot. */
  TableBuilder<T> record(Message head, int weight, Function<T, String> lot) {
    return cells(head, Table.Align.LEFT, weight, item -> leading(lot.apply(item)));
  }

  private static Table.Cell leading(String lot) {
    return new Table.Cell(Text.leading(lot, new Text.Target.File(lot + ".pdf")), Tone.PLAIN);
  }

  /** A column of cells that are laid out already. */
  TableBuilder<T> cells(Message head, Table.Align align, int weight, Function<T, Table.Cell> cell) {
    columns.add(new Table.Column(phrases.say(head), align, weight, columns.isEmpty()));
    cells.add(cell);
    return this;
  }

  private Table.Cell plain(String text, Text.Style style) {
    return new Table.Cell(phrases.text(text, style), Tone.PLAIN);
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

  private Table.Row row(T item) {
    return new Table.Row(cells.stream().map(cell -> cell.apply(item)).toList());
  }
}

package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Sheet;

/**
 * The hand entries of a sheet in full: when it happened and when it was typed, and what was
 * replaced with its old value struck.
 */
final class Entries {

  private final Lot lot;
  private final Phrases phrases;

  Entries(Lot lot, Phrases phrases) {
    this.lot = lot;
    this.phrases = phrases;
  }

  Optional<Block> of(Sheet sheet, String caption) {
    List<Entry> entries = all(sheet);
    if (entries.isEmpty()) {
      return Optional.empty();
    }
    boolean typed = entries.stream().anyMatch(entry -> entry.entered().isPresent());
    Grid grid = new Grid(phrases, caption).head("record.head.time", "Time", 0);
    if (typed) {
      grid.head("record.entries.typed", "Typed", 7);
    }
    grid.head("record.head.what", "What", 10)
        .head("record.head.item", "Item", 7)
        .number("record.head.value", "Value", 8)
        .head("record.head.by", "By", 3)
        .head("record.head.with", "With", 4)
        .head("record.head.note", "Note", 8)
        .head("record.head.where", "Where it stands", 11);
    entries.forEach(entry -> grid.row(row(grid, entry, typed)));
    return Optional.of(grid.table());
  }

  /** Those in force and those that were replaced, in the order of time. */
  private List<Entry> all(Sheet sheet) {
    Stream<Entry> replaced = lot.corrections().stream().map(Lot.Correction::replaced);
    return Stream.concat(replaced, lot.entries().stream())
        .filter(entry -> entry.sheet() == sheet)
        .sorted(Comparator.comparing(entry -> entry.time().earliest()))
        .toList();
  }

  private Table.Cell[] row(Grid grid, Entry entry, boolean typed) {
    Optional<Lot.Correction> struck =
        lot.corrections().stream().filter(each -> each.replaced().equals(entry)).findFirst();
    Text.Style style = struck.isPresent() ? Text.Style.STRUCK : Text.Style.PLAIN;
    List<Table.Cell> cells = new ArrayList<>();
    cells.add(grid.cell(phrases.time(entry.time().written())));
    if (typed) {
      cells.add(typed(entry));
    }
    cells.add(styled(phrases.what(entry), entry.shown().isEmpty() ? style : Text.Style.PLAIN));
    cells.add(grid.cell(entry.item()));
    cells.add(styled(entry.shown(), style));
    cells.add(grid.cell(phrases.orNotRecorded(entry.by())));
    cells.add(grid.cell(instrument(entry)));
    cells.add(grid.cell(note(entry, struck)));
    cells.add(grid.muted(entry.place().toString()));
    return cells.toArray(Table.Cell[]::new);
  }

  private Table.Cell styled(String text, Text.Style style) {
    return new Table.Cell(
        text.isEmpty() ? Text.of("") : Text.of(phrases.bound().span(text, style)), Tone.PLAIN);
  }

  private String instrument(Entry entry) {
    return entry.instrument().isEmpty() && entry.what().shape().needsInstrument()
        ? phrases.notRecorded()
        : entry.instrument();
  }

  /** When it was typed; how much later where that was not at once, and that it is late. */
  private Table.Cell typed(Entry entry) {
    Optional<Instant> typed = entry.entered().map(Moment::written);
    if (typed.isEmpty()) {
      return new Table.Cell(Text.of(phrases.notRecorded()), Tone.PLAIN);
    }
    String time = time(typed.get(), entry);
    Duration after = entry.time().shortestTo(entry.entered().get());
    if (after.compareTo(Duration.ZERO) <= 0) {
      return new Table.Cell(Text.of(time), Tone.PLAIN);
    }
    boolean late = after.compareTo(phrases.lateAfter()) > 0;
    String told =
        phrases.say(
            late
                ? say("record.entries.late", "late by {0}", length(after))
                : say("record.entries.after", "{0} later", length(after)));
    return new Table.Cell(
        Text.of(
            new Text.Span(time + ", ", Text.Style.PLAIN),
            phrases.bound().span(told, late ? Text.Style.STRONG : Text.Style.PLAIN)),
        Tone.PLAIN);
  }

  /** With its date, where that is another day. */
  private String time(Instant typed, Entry entry) {
    boolean sameDay = phrases.date(typed).equals(phrases.date(entry.time().written()));
    return sameDay ? phrases.clock(typed) : phrases.time(typed);
  }

  private static String length(Duration time) {
    return Phrases.quantity(Quantity.of(time.toMinutes(), Unit.MINUTE));
  }

  private String note(Entry entry, Optional<Lot.Correction> struck) {
    List<String> told = new ArrayList<>(List.of(entry.note()));
    struck.ifPresent(
        each ->
            told.add(
                phrases.say(
                    "record.entries.replaced", "replaced by {0}", each.by().place().toString())));
    if (!entry.corrects().isEmpty()) {
      told.add(phrases.say("record.entries.corrects", "corrects {0}", entry.corrects()));
    }
    told.add(other(entry));
    return String.join("; ", told.stream().filter(text -> !text.isEmpty()).toList());
  }

  private static String other(Entry entry) {
    return String.join(
        ", ",
        entry.other().entrySet().stream()
            .filter(each -> !each.getValue().isEmpty())
            .map(each -> each.getKey() + " " + each.getValue())
            .sorted()
            .toList());
  }
}

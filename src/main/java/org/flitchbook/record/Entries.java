package org.flitchbook.record;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Sheet;

/**
 * The hand entries of a sheet in full: when it happened and when it was typed, and what was
 * replaced with its old value struck.
 */
final class Entries extends LotSection {

  Entries(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  Optional<Block> of(Sheet sheet, Message caption) {
    List<Entry> entries = all(sheet);
    TableBuilder<Entry> table = table(caption, entries).column(TIME, 0, this::time);
    if (entries.stream().anyMatch(entry -> entry.entered().isPresent())) {
      table.cells(Message.say("record.entries.typed", "Typed"), Table.Align.LEFT, 7, this::typed);
    }
    return table
        .cells(WHAT, Table.Align.LEFT, 10, e -> cell(what(e), struck(e, e.shown().isEmpty())))
        .column(ITEM, 7, Entry::item)
        .cells(VALUE, Table.Align.RIGHT, 8, e -> cell(e.shown(), struck(e, true)))
        .column(BY, 3, entry -> orNotRecorded(entry.by()))
        .column(WITH, 4, this::instrument)
        .column("record.head.note", "Note", 8, this::note)
        .where(11, entry -> say(entry.place()))
        .ifAny();
  }

  /** Those in force and those that were replaced, in the order of time. */
  private List<Entry> all(Sheet sheet) {
    Stream<Entry> replaced = lot.corrections().stream().map(Lot.Correction::replaced);
    return Stream.concat(replaced, lot.entries().stream())
        .filter(entry -> entry.sheet() == sheet)
        .sorted(Comparator.comparing(entry -> entry.time().earliest()))
        .toList();
  }

  private Optional<Lot.Correction> correction(Entry entry) {
    return lot.corrections().stream().filter(each -> each.replaced().equals(entry)).findFirst();
  }

  private Text.Style struck(Entry entry, boolean ifReplaced) {
    return ifReplaced && correction(entry).isPresent() ? Text.Style.STRUCK : Text.Style.PLAIN;
  }

  private Table.Cell cell(String text, Text.Style style) {
    return new Table.Cell(text(text, style), Tone.PLAIN);
  }

  /** When it was typed; how much later where that was not at once, and that it is late. */
  private Table.Cell typed(Entry entry) {
    String typed =
        entry.entered().map(Moment::written).map(time -> time(time, entry)).orElse(notRecorded());
    return new Table.Cell(
        account.delays().stream()
            .filter(delay -> delay.place().equals(entry.place()))
            .findFirst()
            .map(delay -> Text.of(new Text.Span(typed + ", ", Text.Style.PLAIN), later(delay)))
            .orElse(Text.of(typed)),
        Tone.PLAIN);
  }

  /** With its date, where that is another day. */
  private String time(Instant typed, Entry entry) {
    boolean sameDay = date(typed).equals(date(entry.time().written()));
    return sameDay ? clock(typed) : time(typed);
  }

  private Text.Span later(LotAccount.Delay delay) {
    Quantity after = delay.after();
    Ratio minutes = Ratio.of(after.value().floor().longValueExact());
    String length = quantity(new Quantity(minutes, after.unit()));
    return delay.late()
        ? span(say("record.entries.late", "late by {0}", length), Text.Style.STRONG)
        : span(say("record.entries.after", "{0} later", length), Text.Style.PLAIN);
  }

  private String instrument(Entry entry) {
    return entry.instrument().isEmpty() && entry.what().shape().needsInstrument()
        ? notRecorded()
        : entry.instrument();
  }

  private String note(Entry entry) {
    String replaced =
        correction(entry)
            .map(by -> say("record.entries.replaced", "replaced by {0}", by.by().place()))
            .orElse("");
    String corrects =
        entry.corrects().isEmpty()
            ? ""
            : say("record.entries.corrects", "corrects {0}", entry.corrects());
    return joined("; ", entry.note(), replaced, corrects, other(entry));
  }

  private static String other(Entry entry) {
    return entry.other().entrySet().stream()
        .filter(each -> !each.getValue().isEmpty())
        .map(each -> each.getKey() + " " + each.getValue())
        .sorted()
        .collect(Collectors.joining(", "));
  }
}

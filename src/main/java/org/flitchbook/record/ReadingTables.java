package org.flitchbook.record;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount;
import org.flitchbook.account.LotAccount.InstrumentState;
import org.flitchbook.account.LotAccount.LastCheck;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.LeftOut;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** What was entered by hand, and the probes, places and instruments that served a lot. */
final class ReadingTables extends LotSection {

  ReadingTables(DayJudged day, Judgement judgement) {
    super(day, judgement);
  }

  List<Block> blocks() {
    return new Blocks().add(probes()).add(instruments()).add(leftOut()).list();
  }

  private Block probes() {
    return table("record.probes.caption", "Which readings served the lot", account.readings())
        .column(WHAT, 10, each -> say(each.what()))
        .column(PROBE, 6, each -> probe(each.probe()))
        .column(STEP, 6, each -> say(each.step()))
        .column("record.probes.log", "Log and column", 14, this::log)
        .column(WITH, 5, ProbeReadings::instrument)
        .number("record.probes.readings", "Readings", 5, r -> String.valueOf(r.count()))
        .number(
            "record.probes.every",
            "Every",
            6,
            r -> r.every().map(time -> time.value().floor() + " s").orElse("–"))
        .number("record.probes.accuracy", "± accuracy and error", 8, ReadingTables::spread)
        .or(nothingOf("record.probes.all-readings", "Readings of probes and places"));
  }

  private String log(ProbeReadings readings) {
    return readings.isLog() ? say(readings.origin()) : say("record.probes.by-hand", "hand entries");
  }

  private static String spread(ProbeReadings readings) {
    String above = readings.above().shown();
    String below = readings.below().shown();
    return readings.above().equals(readings.below()) ? "± " + above : "+ " + above + ", − " + below;
  }

  private Block instruments() {
    return table("record.instruments.caption", "Instruments in force", account.instruments())
        .column(
            "record.instruments.instrument",
            "Instrument",
            8,
            each -> each.id() + ", " + word("instrument", each.kind()))
        .column(
            "record.instruments.last-check",
            "Last check",
            8,
            each -> each.last().map(last -> time(last.check())).orElse(notRecorded()))
        .column("record.instruments.read", "What was read", 10, last(this::read))
        .number(ERROR, 0, last(last -> error(last.error(), last.passed())))
        .number("record.instruments.tolerance", "Tolerance", 0, each -> each.tolerance() + "")
        .column(
            "record.instruments.holds-until", "Holds until", 6, last(last -> date(last.until())))
        .where(12, last(last -> say(last.check().place())).andThen(Message::of))
        .or(nothingOf("record.instruments.instruments", "Instruments"));
  }

  private static Function<InstrumentState, String> last(Function<LastCheck, String> shown) {
    return each -> each.last().map(shown).orElse("–");
  }

  private String read(LastCheck last) {
    return say(last.check().what()) + " " + last.check().shown();
  }

  private record Run(String probe, LeftOut leftOut) {}

  /** The readings that were left out of the curves, with what they showed and why. */
  private Optional<Block> leftOut() {
    List<Run> runs =
        account.readings().stream()
            .flatMap(from -> from.leftOut().stream().map(each -> new Run(from.probe(), each)))
            .toList();
    return table("record.left-out.caption", "Readings left out of the curves", runs)
        .column(PROBE, 4, run -> probe(run.probe()))
        .column("record.left-out.from", "From", 8, r -> time(r.leftOut().from()))
        .column("record.left-out.until", "Until", 8, r -> time(r.leftOut().until()))
        .number("record.left-out.readings", "Readings", 4, run -> run.leftOut().count() + "")
        .number("record.left-out.values", "Values", 8, run -> values(run.leftOut()))
        .column(WHY, 12, run -> word("rule", run.leftOut().why()))
        .where(12, run -> run.leftOut().place())
        .ifAny();
  }

  private String values(LeftOut run) {
    return run.lowest().equals(run.highest())
        ? run.lowest().shown()
        : range(run.lowest(), run.highest());
  }

  private record OfPlace(What what, Reading reading, String remark) {}

  /**
   * What was read of the step's place while the lot lay in it, beyond the lot's own entries: hand
   * readings written beside other lots, and the ends of what a log saw.
   */
  Optional<Block> ofPlace(Step step) {
    Set<Place> own = lot.entries().stream().map(Entry::place).collect(Collectors.toSet());
    List<OfPlace> readings =
        account.readings().stream()
            .filter(each -> each.step() == step && each.what() != What.INTERNAL_TEMPERATURE)
            .flatMap(each -> Stream.concat(byHand(each, own), ends(each)))
            .toList();
    return table("record.place.caption", "Readings of the place that serve this lot too", readings)
        .column(TIME, 8, each -> time(each.reading().at()))
        .column(WHAT, 10, each -> say(each.what()))
        .number(VALUE, 5, each -> level(each.reading()))
        .column(REMARK, 10, OfPlace::remark)
        .where(12, each -> each.reading().place())
        .ifAny();
  }

  private static Stream<OfPlace> byHand(ProbeReadings readings, Set<Place> own) {
    Track track = readings.track();
    return IntStream.range(0, track.size())
        .filter(i -> track.byHand(i) && !own.contains(track.place(i)))
        .mapToObj(i -> new OfPlace(readings.what(), readings.reading(i), ""));
  }

  private Stream<OfPlace> ends(ProbeReadings log) {
    String lowest = say("record.place.lowest", "lowest of {0} in the log", log.count());
    String highest = say("record.place.highest", "highest of {0} in the log", log.count());
    return Stream.of(
            new OfPlace(log.what(), log.lowest(), lowest),
            new OfPlace(log.what(), log.highest(), highest))
        .filter(each -> log.isLog());
  }

  /**
   * The hand entries of a sheet in full: when it happened and when it was typed, and what was
   * replaced with its old value struck.
   */
  Optional<Block> entries(Sheet sheet, Message caption) {
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
        .where(11, Entry::place)
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
    return ifReplaced && correction(entry).isPresent() ? Text.Style.STRUCK : PLAIN;
  }

  /** When it was typed; how much later where that was not at once, and that it is late. */
  private Table.Cell typed(Entry entry) {
    String typed =
        entry.entered().map(Moment::written).map(time -> time(time, entry)).orElse(notRecorded());
    return new Table.Cell(
        account.delays().stream()
            .filter(delay -> delay.place().equals(entry.place()))
            .findFirst()
            .map(delay -> Text.of(new Text.Span(typed + ", ", PLAIN), later(delay)))
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
    String length = quantity(Quantity.of(after.value().floor().longValueExact(), after.unit()));
    return delay.late()
        ? span(say("record.entries.late", "late by {0}", length), Text.Style.STRONG)
        : span(say("record.entries.after", "{0} later", length), PLAIN);
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
    String other =
        entry.other().entrySet().stream()
            .filter(each -> !each.getValue().isEmpty())
            .map(each -> each.getKey() + " " + each.getValue())
            .sorted()
            .collect(Collectors.joining(", "));
    return joined("; ", entry.note(), replaced, corrects, other);
  }
}

package org.flitchbook.record;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount.InstrumentState;
import org.flitchbook.account.LotAccount.LastCheck;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Track;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The probes, places and instruments that served a lot, and the readings that were left out. */
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
        .number("record.probes.every", "Every", 6, ReadingTables::every)
        .number("record.probes.accuracy", "± accuracy and error", 8, ReadingTables::spread)
        .or(nothingOf("record.probes.all-readings", "Readings of probes and places"));
  }

  private String log(ProbeReadings readings) {
    return readings.isLog() ? say(readings.origin()) : say("record.probes.by-hand", "hand entries");
  }

  private static String every(ProbeReadings readings) {
    return readings.every().map(time -> time.value().floor() + " s").orElse("–");
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
        .where(12, last(last -> say(last.check().place())))
        .or(nothingOf("record.instruments.instruments", "Instruments"));
  }

  private static Function<InstrumentState, String> last(Function<LastCheck, String> shown) {
    return each -> each.last().map(shown).orElse("–");
  }

  private String read(LastCheck last) {
    return say(last.check().what()) + " " + last.check().shown();
  }

  /** Readings that were left out of one probe's curve. */
  private record Run(String probe, ProbeReadings.LeftOut leftOut) {
    static Stream<Run> of(ProbeReadings readings) {
      return readings.leftOut().stream().map(each -> new Run(readings.probe(), each));
    }
  }

  /** The readings that were left out of the curves, with what they showed and why. */
  private Optional<Block> leftOut() {
    List<Run> runs = account.readings().stream().flatMap(Run::of).toList();
    return table("record.left-out.caption", "Readings left out of the curves", runs)
        .column(PROBE, 4, run -> probe(run.probe()))
        .column("record.left-out.from", "From", 8, r -> time(r.leftOut().from()))
        .column("record.left-out.until", "Until", 8, r -> time(r.leftOut().until()))
        .number("record.left-out.readings", "Readings", 4, run -> run.leftOut().count() + "")
        .number("record.left-out.values", "Values", 8, run -> values(run.leftOut()))
        .column(WHY, 12, run -> word("rule", run.leftOut().why()))
        .where(12, run -> say(run.leftOut().place()))
        .ifAny();
  }

  private String values(ProbeReadings.LeftOut run) {
    return run.lowest().equals(run.highest())
        ? run.lowest().shown()
        : range(run.lowest(), run.highest());
  }

  /** A reading of a place with what there is to say of it. */
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
        .where(12, each -> say(each.reading().place()))
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
    return log.isLog()
        ? Stream.of(
            new OfPlace(log.what(), log.lowest(), lowest),
            new OfPlace(log.what(), log.highest(), highest))
        : Stream.empty();
  }
}

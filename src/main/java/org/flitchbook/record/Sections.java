package org.flitchbook.record;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Paragraph;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Monitoring;
import org.flitchbook.plan.RuleSet;
import org.flitchbook.sums.Shift;

/** The sections at the end of a batch record: probes, instruments, monitoring, doubts. */
final class Sections {

  private final DayJudged day;
  private final Judgement judgement;
  private final Lot lot;
  private final Phrases phrases;

  Sections(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.phrases = day.phrases();
  }

  Block probes() {
    Grid grid =
        phrases
            .grid("record.probes.caption")
            .head("record.head.what", 10)
            .head("record.head.probe", 6)
            .head("record.head.step", 6)
            .head("record.probes.log", 14)
            .head("record.head.with", 5)
            .number("record.probes.readings", 5)
            .number("record.probes.every", 6)
            .number("record.probes.accuracy", 8);
    for (Lot.StepTrack each : lot.tracks()) {
      Track track = each.track();
      grid.row(
          phrases.word("what", track.what().word()),
          phrases.probe(track),
          phrases.step(each.step()),
          track.interval() == 0 ? phrases.say("record.probes.by-hand") : track.origin().toString(),
          track.instrument(),
          String.valueOf(track.size()),
          track.interval() == 0 ? "–" : Duration.ofMillis(track.interval()).toSeconds() + " s",
          spread(track));
    }
    return grid.isEmpty()
        ? phrases.nothingOf(phrases.say("record.probes.all-readings"))
        : grid.table();
  }

  private String spread(Track track) {
    Unit unit =
        track.unit().dimension() == Dimension.SHARE
            ? track.unit()
            : day.plan().establishment().temperature();
    long up = track.level(0, Shift.UP) - track.level(0, Shift.AS_WRITTEN);
    long down = track.level(0, Shift.AS_WRITTEN) - track.level(0, Shift.DOWN);
    String above = Level.difference(up, unit).shown();
    String below = Level.difference(down, unit).shown();
    return up == down ? "± " + above : "+ " + above + ", − " + below;
  }

  /** The instruments that the lot's entries and logs name, with the check in force. */
  Block instruments() {
    Grid grid =
        phrases
            .grid("record.instruments.caption")
            .head("record.instruments.instrument", 8)
            .head("record.instruments.last-check", 8)
            .head("record.instruments.read", 10)
            .number("record.instruments.error", 0)
            .number("record.instruments.tolerance", 0)
            .head("record.instruments.holds-until", 6)
            .head("record.head.where", 12);
    for (Instrument instrument : day.plan().instruments()) {
      if (isUsed(instrument)) {
        Optional<Register.Check> last = day.register().last(instrument.id(), day.moment());
        grid.row(row(instrument, last));
      }
    }
    return grid.isEmpty()
        ? phrases.nothingOf(phrases.say("record.instruments.instruments"))
        : grid.table();
  }

  private String[] row(Instrument instrument, Optional<Register.Check> last) {
    return new String[] {
      instrument.id() + ", " + phrases.word("instrument", instrument.kind()),
      last.map(check -> phrases.time(check.at())).orElse(phrases.notRecorded()),
      last.map(this::read).orElse("–"),
      last.map(this::error).orElse("–"),
      instrument.tolerance().toString(),
      last.map(check -> phrases.date(until(instrument, check))).orElse("–"),
      last.map(check -> check.entry().place().toString()).orElse("–")
    };
  }

  private String read(Register.Check check) {
    return phrases.word("what", check.entry().what().word()) + " " + check.entry().shown();
  }

  private String error(Register.Check check) {
    String error = check.error().shown();
    return check.passed() ? error : phrases.say("record.instruments.failed", error);
  }

  private static Instant until(Instrument instrument, Register.Check check) {
    return check.at().plus(Register.validity(instrument));
  }

  private boolean isUsed(Instrument instrument) {
    return lot.entries().stream().anyMatch(e -> e.instrument().equals(instrument.id()))
        || lot.tracks().stream()
            .anyMatch(each -> each.track().instrument().equals(instrument.id()));
  }

  Block monitoring() {
    Grid grid =
        phrases
            .grid("record.monitoring.caption")
            .head("record.head.limit", 10)
            .head("record.monitoring.because", 12)
            .head("record.monitoring.watched", 8)
            .head("record.head.by", 3)
            .head("record.monitoring.if-missed", 9)
            .head("record.monitoring.edition", 12);
    for (Finding finding : Checks.inOrder(judgement.findings())) {
      Limit limit = finding.limit();
      Monitoring watched = limit.monitoring();
      grid.row(
          limit.name() + " (" + limit.id() + ")",
          limit.because(),
          watched.monitored().isEmpty() ? "–" : watched.monitored(),
          watched.by().isEmpty() ? "–" : watched.by(),
          watched.ifMissed().isEmpty() ? "–" : watched.ifMissed(),
          limit.source().edition() + "; " + standing(limit));
    }
    return grid.table();
  }

  private String standing(Limit limit) {
    return phrases.word("standing-told", limit.source().standing().word());
  }

  List<Block> notRead() {
    List<Block> blocks = new ArrayList<>();
    List<String> conflicts = lot.product().map(p -> p.conflicts()).orElse(List.of());
    if (!conflicts.isEmpty()) {
      blocks.add(
          new Paragraph(
              phrases
                  .bound()
                  .strong(
                      phrases.say("record.monitoring.conflict", String.join("; ", conflicts)))));
    }
    for (RuleSet set : day.plan().ruleSets()) {
      if (!set.notRead().isEmpty()) {
        blocks.add(
            phrases.paragraph(
                phrases.say(
                    "record.monitoring.not-read", set.name(), String.join(" ", set.notRead()))));
      }
    }
    if (!day.plan().ownTemplates().isEmpty()) {
      blocks.add(
          phrases.paragraph(
              phrases.say(
                  "record.monitoring.own-files", String.join(", ", day.plan().ownTemplates()))));
    }
    return blocks;
  }

  Block doubts() {
    Grid grid =
        phrases
            .grid("record.doubts.caption")
            .head("record.doubts.rule", 8)
            .head("record.head.follows", 6)
            .head("record.head.place", 12)
            .head("record.head.fault-found", 16)
            .head("record.head.fault-expected", 14);
    for (Fault fault : judgement.faults()) {
      grid.row(
          phrases.word("rule", fault.rule()),
          phrases.follows(fault.severity()),
          fault.place().toString(),
          fault.found(),
          fault.expected());
    }
    return grid.isEmpty() ? phrases.paragraph(phrases.say("record.doubts.none")) : grid.table();
  }
}

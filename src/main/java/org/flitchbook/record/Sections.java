package org.flitchbook.record;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
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
  private final ZoneId zone;

  Sections(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.zone = day.plan().establishment().zone();
  }

  Block probes() {
    Grid grid =
        new Grid("Which readings served the lot")
            .head("What", 10)
            .head("Probe", 6)
            .head("Step", 6)
            .head("Log and column", 14)
            .head("With", 5)
            .number("Readings", 5)
            .number("Every", 6)
            .number("± accuracy and error", 8);
    for (Lot.StepTrack each : lot.tracks()) {
      Track track = each.track();
      grid.row(
          track.what().word(),
          track.called(),
          each.step().word(),
          track.interval() == 0 ? "hand entries" : track.origin().toString(),
          track.instrument(),
          String.valueOf(track.size()),
          track.interval() == 0 ? "–" : Duration.ofMillis(track.interval()).toSeconds() + " s",
          spread(track));
    }
    return grid.isEmpty()
        ? new Paragraph(Bound.of("Readings of probes and places: " + Phrases.NOT_RECORDED))
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
        new Grid("Instruments in force")
            .head("Instrument", 8)
            .head("Last check", 8)
            .head("What was read", 10)
            .number("Error", 0)
            .number("Tolerance", 0)
            .head("Holds until", 6)
            .head("Where it stands", 12);
    for (Instrument instrument : day.plan().instruments()) {
      if (isUsed(instrument)) {
        Optional<Register.Check> last = day.register().last(instrument.id(), day.moment());
        grid.row(row(instrument, last));
      }
    }
    return grid.isEmpty()
        ? new Paragraph(Bound.of("Instruments: " + Phrases.NOT_RECORDED))
        : grid.table();
  }

  private String[] row(Instrument instrument, Optional<Register.Check> last) {
    return new String[] {
      instrument.id() + ", " + instrument.kind(),
      last.map(check -> Phrases.time(check.at(), zone)).orElse(Phrases.NOT_RECORDED),
      last.map(check -> check.entry().what().word() + " " + check.entry().shown()).orElse("–"),
      last.map(check -> check.error().shown() + (check.passed() ? "" : ", FAILED")).orElse("–"),
      instrument.tolerance().toString(),
      last.map(check -> until(instrument, check).atZone(zone).toLocalDate().toString()).orElse("–"),
      last.map(check -> check.entry().place().toString()).orElse("–")
    };
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
        new Grid("Each limit: why, how it is watched, what is done where it is missed")
            .head("Limit", 10)
            .head("Because", 12)
            .head("Watched", 8)
            .head("By", 3)
            .head("If missed", 9)
            .head("Edition and standing", 12);
    for (Finding finding : Checks.inOrder(judgement.findings())) {
      Limit limit = finding.limit();
      Monitoring watched = limit.monitoring();
      grid.row(
          limit.name() + " (" + limit.id() + ")",
          limit.because(),
          watched.monitored().isEmpty() ? "–" : watched.monitored(),
          watched.by().isEmpty() ? "–" : watched.by(),
          watched.ifMissed().isEmpty() ? "–" : watched.ifMissed(),
          limit.source().edition() + "; " + limit.source().standing().sentence());
    }
    return grid.table();
  }

  List<Block> notRead() {
    List<Block> blocks = new ArrayList<>();
    List<String> conflicts = lot.product().map(p -> p.conflicts()).orElse(List.of());
    if (!conflicts.isEmpty()) {
      blocks.add(
          new Paragraph(Bound.strong("Limits in conflict: " + String.join("; ", conflicts) + ".")));
    }
    for (RuleSet set : day.plan().ruleSets()) {
      if (!set.notRead().isEmpty()) {
        blocks.add(
            new Paragraph(
                Bound.of(
                    "Of the rule set \""
                        + set.name()
                        + "\" this was not read in its own text: "
                        + String.join(" ", set.notRead()))));
      }
    }
    if (!day.plan().ownTemplates().isEmpty()) {
      blocks.add(
          new Paragraph(
              Bound.of(
                  "The book's own files stood in for the tool's: "
                      + String.join(", ", day.plan().ownTemplates())
                      + ".")));
    }
    return blocks;
  }

  Block doubts() {
    Grid grid =
        new Grid("Data in doubt, and what was noted")
            .head("Rule", 8)
            .head("What follows", 6)
            .head("Where", 12)
            .head("Found", 16)
            .head("Expected", 14);
    for (Fault fault : judgement.faults()) {
      grid.row(
          fault.rule(),
          Phrases.follows(fault.severity()),
          fault.place().toString(),
          fault.found(),
          fault.expected());
    }
    return grid.isEmpty()
        ? new Paragraph(Bound.of("Nothing in the data of this lot was in doubt."))
        : grid.table();
  }
}

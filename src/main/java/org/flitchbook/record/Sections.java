package org.flitchbook.record;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Paragraph;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Limit.Monitoring;
import org.flitchbook.plan.RuleSet;
import org.flitchbook.sums.Shift;

/** The sections at the end of a batch record: probes, monitoring, doubts. */
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
            .grid("record.probes.caption", "Which readings served the lot")
            .head("record.head.what", "What", 10)
            .head("record.head.probe", "Probe", 6)
            .head("record.head.step", "Step", 6)
            .head("record.probes.log", "Log and column", 14)
            .head("record.head.with", "With", 5)
            .number("record.probes.readings", "Readings", 5)
            .number("record.probes.every", "Every", 6)
            .number("record.probes.accuracy", "± accuracy and error", 8);
    for (Lot.StepTrack each : lot.tracks()) {
      Track track = each.track();
      grid.row(
          phrases.word("what", track.what().word()),
          phrases.probe(track),
          phrases.step(each.step()),
          track.interval() == 0
              ? phrases.say("record.probes.by-hand", "hand entries")
              : track.origin().toString(),
          track.instrument(),
          String.valueOf(track.size()),
          track.interval() == 0 ? "–" : Duration.ofMillis(track.interval()).toSeconds() + " s",
          spread(track));
    }
    return grid.isEmpty()
        ? phrases.nothingOf(
            phrases.say("record.probes.all-readings", "Readings of probes and places"))
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

  Block monitoring() {
    Grid grid =
        phrases
            .grid(
                "record.monitoring.caption",
                "Each limit: why, how it is watched, what is done where it is missed")
            .head("record.head.limit", "Limit", 10)
            .head("record.monitoring.because", "Because", 17)
            .head("record.monitoring.watched", "Watched", 8)
            .head("record.head.by", "By", 3)
            .head("record.monitoring.if-missed", "If missed", 8)
            .head("record.monitoring.edition", "Edition and standing", 12);
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
    return limit.source().standing().told().in(day.plan().words());
  }

  List<Block> notRead() {
    List<Block> blocks = new ArrayList<>();
    List<Message> conflicts = lot.product().map(p -> p.conflicts()).orElse(List.of());
    if (!conflicts.isEmpty()) {
      blocks.add(
          new Paragraph(
              phrases
                  .bound()
                  .strong(
                      phrases.say(
                          "record.monitoring.conflict",
                          "Limits in conflict: {0}.",
                          Listing.semicolons(conflicts)))));
    }
    for (RuleSet set : day.plan().ruleSets()) {
      if (!set.notRead().isEmpty()) {
        blocks.add(
            phrases.paragraph(
                phrases.say(
                    "record.monitoring.not-read",
                    "Of the rule set \"{0}\" this was not read in its own text: {1}",
                    set.name(),
                    String.join(" ", set.notRead()))));
      }
    }
    if (!day.plan().ownTemplates().isEmpty()) {
      blocks.add(
          phrases.paragraph(
              phrases.say(
                  "record.monitoring.own-files",
                  "The book's own files stood in for the tool's: {0}.",
                  String.join(", ", day.plan().ownTemplates()))));
    }
    return blocks;
  }

  Block doubts() {
    Grid grid =
        phrases
            .grid("record.doubts.caption", "Data in doubt, and what was noted")
            .head("record.doubts.rule", "Rule", 8)
            .head("record.head.follows", "What follows", 6)
            .head("record.head.place", "Where", 12)
            .head("record.head.fault-found", "Found", 16)
            .head("record.head.fault-expected", "Expected", 14);
    for (Fault fault : judgement.faults()) {
      grid.row(
          phrases.word("rule", fault.rule()),
          phrases.follows(fault),
          fault.place().toString(),
          phrases.say(fault.found()),
          phrases.say(fault.expected()));
    }
    return grid.isEmpty()
        ? phrases.paragraph(
            phrases.say("record.doubts.none", "Nothing in the data of this lot was in doubt."))
        : grid.table();
  }
}

package org.flitchbook.record;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Instrument;
import org.flitchbook.sums.Curve;

/** How good the evidence is that a verdict rests on, in one sentence. */
final class EvidenceWords {

  private static final long MINUTE = 60_000;

  private final DayJudged day;
  private final Judgement judgement;
  private final Lot lot;
  private final Phrases phrases;

  EvidenceWords(DayJudged day, Judgement judgement) {
    this.day = day;
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.phrases = day.phrases();
  }

  String sentence() {
    List<String> told = new ArrayList<>();
    told.add(
        phrases.count(
            "record.evidence.entries",
            lot.entries().size(),
            "{0} entry by hand",
            "{0} entries by hand"));
    logs(told);
    if (!lot.corrections().isEmpty()) {
      told.add(
          phrases.count(
              "record.evidence.corrections",
              lot.corrections().size(),
              "{0} correction",
              "{0} corrections"));
    }
    told.add(instruments());
    told.add(doubts());
    return String.join("; ", told);
  }

  private void logs(List<String> told) {
    Set<Place> logs = new HashSet<>();
    long readings = 0;
    List<Long> gaps = new ArrayList<>();
    for (Track track : lot.tracks().stream().map(Lot.StepTrack::track).toList()) {
      if (track.interval() > 0 && logs.add(track.origin())) {
        readings += track.size();
        track.gaps().forEach(gap -> gaps.add(minutes(track, gap)));
      }
    }
    if (!logs.isEmpty()) {
      told.add(
          phrases.count(
              "record.evidence.logs",
              logs.size(),
              "{0} log with {1} readings",
              "{0} logs with {1} readings",
              readings));
      long longest = gaps.stream().mapToLong(Long::longValue).max().orElse(0);
      told.add(
          gaps.isEmpty()
              ? phrases.say("record.evidence.no-gap", "no gap")
              : phrases.count(
                  "record.evidence.gaps",
                  gaps.size(),
                  "{0} gap, {1} min",
                  "{0} gaps, the longest {1} min",
                  longest));
    }
  }

  private static long minutes(Track track, Curve.Gap gap) {
    return (track.earliest(gap.to()) - track.earliest(gap.from())) / MINUTE;
  }

  private String instruments() {
    List<String> lapsed =
        new InstrumentTable(day, lot).lapsed().stream().map(Instrument::id).toList();
    return lapsed.isEmpty()
        ? phrases.say("record.evidence.in-force", "instruments in force")
        : phrases.say(
            "record.evidence.lapsed", "no check in force of {0}", String.join(", ", lapsed));
  }

  private String doubts() {
    int open = judgement.openFaults().size();
    int noted = judgement.faults().size() - open;
    if (open > 0) {
      return phrases.count(
          "record.evidence.open", open, "{0} doubt to be explained", "{0} doubts to be explained");
    }
    return noted > 0
        ? phrases.count(
            "record.evidence.noted", noted, "nothing open, {0} note", "nothing open, {0} notes")
        : phrases.say("record.evidence.undoubted", "nothing in doubt");
  }
}

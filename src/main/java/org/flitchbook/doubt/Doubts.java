package org.flitchbook.doubt;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Plan;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Curve;
import org.flitchbook.sums.Shift;

/** Finds in a lot's data what would make a bad batch look good. */
public final class Doubts {

  static final String GAP = "gap";
  static final String RE_WARMING = "re-warming";
  static final List<String> NAMES =
      List.of(
          GAP,
          RE_WARMING,
          InstrumentDoubts.NOT_IN_FORCE,
          InstrumentDoubts.FINER,
          InstrumentDoubts.FAILED);

  private final Plan plan;
  private final List<Rule> rules;
  private final Lot lot;
  private final List<Fault> faults = new ArrayList<>();

  private Doubts(Plan plan, List<Rule> rules, Lot lot) {
    this.plan = plan;
    this.rules = rules;
    this.lot = lot;
  }

  /** The rules with their numbers; what is wrong with the file goes to the faults. */
  public static List<Rule> rules(SourceFile file, List<Fault> faults) {
    return RuleReader.read(file, faults);
  }

  /** What the rules say of one lot. */
  public static List<Fault> find(Plan plan, List<Rule> rules, Register register, Lot lot) {
    Doubts doubts = new Doubts(plan, rules, lot);
    for (Track track : lot.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE)) {
      track.gaps().forEach(gap -> doubts.gap(track, gap));
      doubts.reWarming(track);
    }
    doubts.faults.addAll(new InstrumentDoubts(plan, rules, register).of(lot));
    return doubts.faults;
  }

  private Optional<Rule> rule(String name) {
    return rules.stream().filter(rule -> rule.name().equals(name)).findFirst();
  }

  private void gap(Track track, Curve.Gap gap) {
    int from = gap.from();
    int to = gap.to();
    long minutes = (track.earliest(to) - track.earliest(from)) / 60_000;
    String hands = gap.byHand() == 0 ? "" : ", " + gap.byHand() + " by hand in it";
    rule(GAP)
        .ifPresent(
            rule ->
                faults.add(
                    new Fault(
                        rule.name(),
                        rule.severity(),
                        lot.code(),
                        track.place(to),
                        "no reading of "
                            + track.called()
                            + " from "
                            + clock(track.earliest(from))
                            + " to "
                            + clock(track.earliest(to))
                            + " ("
                            + minutes
                            + " min"
                            + hands
                            + ")",
                        "a reading every " + track.interval() / 1000 + " s")));
  }

  private void reWarming(Track track) {
    Optional<Stay> chill = lot.stay(Step.CHILL);
    Optional<Rule> rule = rule(RE_WARMING);
    if (chill.isPresent() && rule.isPresent() && rule.get().above().isPresent()) {
      reWarming(track, chill.get().into().time().latest(), rule.get());
    }
  }

  private void reWarming(Track track, Instant from, Rule rule) {
    long allowed = Level.ofDifference(rule.above().orElseThrow());
    long lowest = Long.MAX_VALUE;
    for (int i = 0; i < track.size(); i++) {
      boolean chilling = track.earliest(i) >= from.toEpochMilli();
      long level = track.level(i, Shift.AS_WRITTEN);
      if (chilling && !track.byHand(i)) {
        if (lowest != Long.MAX_VALUE && level - lowest > allowed) {
          reWarmed(track, i, level - lowest, rule);
          return;
        }
        lowest = Math.min(lowest, level);
      }
    }
  }

  private void reWarmed(Track track, int index, long rise, Rule rule) {
    Unit unit = plan.establishment().temperature();
    Quantity level = Level.quantity(track.level(index, Shift.AS_WRITTEN), unit);
    Quantity by = new Quantity(Level.difference(rise, unit).value(), unit);
    faults.add(
        new Fault(
            rule.name(),
            rule.severity(),
            lot.code(),
            track.place(index),
            level.shown()
                + " at "
                + clock(track.earliest(index))
                + ", up by "
                + by.shown()
                + " while it chills",
            "no rise above " + rule.above().map(Quantity::shown).orElse("") + "; " + rule.what()));
  }

  private String clock(long millis) {
    ZoneId zone = plan.establishment().zone();
    return Instant.ofEpochMilli(millis).atZone(zone).toLocalTime().toString();
  }
}

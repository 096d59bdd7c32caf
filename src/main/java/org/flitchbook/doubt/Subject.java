package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** The lot that is looked at, with the plan, the rules and the checks of its instruments. */
record Subject(Plan plan, List<Rule> rules, Register register, Lot lot) {

  /** Its own rows, and those of its places, which may stand under another lot or under none. */
  Stream<Entry> rows() {
    return Stream.concat(
            lot.entries().stream(),
            HandReading.read(lot.tracks().stream().map(Lot.StepTrack::track)))
        .distinct();
  }

  /** The rules that look for something; none where the book leaves them out. */
  Stream<Rule> rules(Class<?> kind) {
    return rules.stream().filter(rule -> kind.isInstance(rule.numbers()));
  }

  /** The same with a lot of which some readings were left out. */
  Subject of(Lot other) {
    return new Subject(plan, rules, register, other);
  }

  /** The readings of the core, the logs' and those by hand. */
  List<Track> coreTracks() {
    return lot.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  /** The same, with those as one that handed over to each other. */
  List<Track> coreCurves() {
    return lot.curves(What.INTERNAL_TEMPERATURE, Step.SMOKE, plan.practice());
  }

  /** Those of its probes that sat in it in the heat. */
  List<Track> heated() {
    return lot.heated(What.INTERNAL_TEMPERATURE, Step.SMOKE, plan.practice());
  }

  /** The probes of the core whose readings were logged. */
  List<ProbeLog> cores() {
    return logged(coreTracks().stream());
  }

  /** All probes and sensors whose readings were logged. */
  List<ProbeLog> logs() {
    return logged(lot.tracks().stream().map(Lot.StepTrack::track));
  }

  Air air(Step step) {
    What what = step == Step.SMOKE ? What.CHAMBER_TEMPERATURE : What.COOLER_TEMPERATURE;
    return new Air(logged(lot.tracks(what, step).stream()), plan.practice().airBeside().toMillis());
  }

  List<Air> airs() {
    return List.of(air(Step.SMOKE), air(Step.CHILL));
  }

  private List<ProbeLog> logged(Stream<Track> tracks) {
    return tracks
        .filter(track -> track.interval() > 0)
        .map(track -> new ProbeLog(this, track))
        .toList();
  }

  /** The whole logs that name the lot's core, with what was read before and after its steps. */
  Stream<Series> wholeLogs() {
    return lot.logs().stream()
        .filter(series -> series.what() == What.INTERNAL_TEMPERATURE)
        .filter(series -> series.samples().size() > 0);
  }

  static Place begin(Series series) {
    return new Place(series.samples().file(0), series.samples().line(0), series.column());
  }

  /** Where a core leaps, by the rule for a probe that moved. */
  List<Leaps.Leap> leaps(ProbeLog core) {
    return rules(ChangeRule.ProbeMoved.class)
        .findFirst()
        .map(rule -> Leaps.of((ChangeRule.ProbeMoved) rule.numbers(), this, core))
        .orElse(List.of());
  }

  /** What was read of one thing by hand during one step, for each; in order of time. */
  List<List<Entry>> handReadings() {
    Map<String, Set<Entry>> all = new LinkedHashMap<>();
    for (Lot.StepTrack each : lot.tracks()) {
      Track track = each.track();
      for (int i = 0; i < track.size(); i++) {
        // A reading by hand lies in the track of every probe; it counts once.
        Optional<Entry> entry = track.entry(i);
        if (entry.isPresent()) {
          String of = each.step() + " " + track.what() + " " + track.location(i);
          all.computeIfAbsent(of, key -> new LinkedHashSet<>()).add(entry.get());
        }
      }
    }
    return all.values().stream().map(List::copyOf).toList();
  }

  Stream<Kind> limits() {
    return lot.product().stream().flatMap(product -> product.limits().stream()).map(Limit::kind);
  }

  /** The bands of the core through which the lot's limits clock it. */
  List<Kind.Stage> stages() {
    return limits()
        .flatMap(kind -> kind instanceof Kind.Span span ? Stream.of(span) : Stream.of())
        .filter(span -> span.what() == What.INTERNAL_TEMPERATURE)
        .flatMap(span -> span.stages().stream())
        .toList();
  }

  /** The bounds of the bands through which it must cool, as levels. */
  List<Long> coolingBounds() {
    return stages().stream()
        .filter(Kind.Stage::falling)
        .flatMap(stage -> Stream.of(stage.from(), stage.to()))
        .map(Level::of)
        .distinct()
        .toList();
  }

  /** When the lot went into a step, as written, in ms; empty where nobody wrote it. */
  Optional<Long> into(Step step) {
    return lot.stay(step).map(stay -> stay.into().time().earliest().toEpochMilli());
  }

  /** When a step ended, at the latest; empty while it runs. */
  Optional<Long> endOf(Step step) {
    return lot.end(step).map(end -> end.latest().toEpochMilli());
  }

  /** One step of the scale that an entry was weighed on, as the plan has it. */
  Optional<Quantity> scaleStep(Entry entry) {
    return plan.instrument(entry.instrument())
        .flatMap(scale -> scale.readability(entry.amount().unit()));
  }

  static Word probe(Track track) {
    return new Word("probe", track.name());
  }

  /** A time of day in the plan's zone, as a maker reads it off the wall. */
  Time clock(long millis) {
    return Time.clock(Instant.ofEpochMilli(millis), plan.establishment().zone());
  }

  /** As people say it: {@code 45 min}, {@code 6 h}, {@code 7 d}; cut, not rounded. */
  static Quantity length(Duration length) {
    if (length.toDays() >= 2) {
      return Quantity.of(length.toDays(), Unit.DAY);
    }
    return length.toHours() >= 2
        ? Quantity.of(length.toHours(), Unit.HOUR)
        : Quantity.of(length.toMinutes(), Unit.MINUTE);
  }

  static Quantity percent(Ratio share) {
    return new Quantity(share.times(Ratio.of(100)), Unit.PERCENT);
  }

  /** {@code 139.3 °F at 13:00}. */
  Message said(Track track, int index) {
    return say("doubt.value-at", "{0} at {1}", shown(track, index), clock(track.earliest(index)));
  }

  Quantity shown(Track track, int index) {
    return shown(track.level(index, Shift.AS_WRITTEN));
  }

  /** A level in the unit in which the establishment reads temperatures. */
  Quantity shown(long level) {
    return Level.quantity(level, plan.establishment().temperature());
  }

  Quantity difference(long levels) {
    return Level.difference(levels, plan.establishment().temperature());
  }
}

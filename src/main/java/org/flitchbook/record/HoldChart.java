package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The cooler over the days of the cure, with its limits, the readings by hand and the turns. */
final class HoldChart {

  private static final int HEIGHT = 110;

  private final Judgement judgement;
  private final Lot lot;
  private final Unit unit;
  private final Phrases phrases;
  private final List<Track> tracks;

  HoldChart(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.unit = day.plan().establishment().temperature();
    this.phrases = day.phrases();
    this.tracks = lot.tracks(What.COOLER_TEMPERATURE, Step.CURE);
  }

  Optional<Block> block() {
    return time().map(this::chart);
  }

  /** From into cure to out of it, or to the last reading while it is there. */
  private Optional<TimeAxis> time() {
    Optional<Long> from =
        lot.stay(Step.CURE).map(Stay::into).map(each -> each.time().written().toEpochMilli());
    long last =
        tracks.stream().mapToLong(track -> track.earliest(track.size() - 1)).max().orElse(0);
    long to = lot.end(Step.CURE).map(Moment::written).map(Instant::toEpochMilli).orElse(last);
    return from.filter(begin -> !tracks.isEmpty() && begin < to)
        .map(begin -> new TimeAxis(begin, to, phrases));
  }

  private Block chart(TimeAxis time) {
    List<Drawn> drawn = tracks.stream().map(track -> new Drawn(track, unit, time)).toList();
    List<Chart.Guide> guides = guides();
    double[] seen = drawn.stream().flatMapToDouble(Drawn::seen).toArray();
    ValueAxis values = ValueAxis.over(unit, seen, guides, phrases);
    return new Chart(
        phrases.say("record.hold.caption", "Cooler through the cure"),
        sentence(drawn, time),
        time.axis(),
        values.axis(),
        drawn.stream().map(this::curve).toList(),
        guides,
        marks(drawn, time, values),
        drawn.stream().flatMap(each -> each.gaps().stream()).toList(),
        HEIGHT);
  }

  private Chart.Curve curve(Drawn drawn) {
    boolean logged = drawn.track().interval() > 0;
    return drawn.curve(
        phrases.say("record.hold.cooler", "cooler, {0}", phrases.probe(drawn.track())),
        logged ? Chart.Stroke.SOLID : Chart.Stroke.THIN_DASHED);
  }

  private List<Chart.Guide> guides() {
    List<Chart.Guide> guides = new ArrayList<>();
    for (Finding finding : judgement.findings()) {
      if (finding.limit().step() == Step.CURE
          && finding.limit().kind() instanceof Kind.Holding holding
          && holding.what() == What.COOLER_TEMPERATURE) {
        String label = holding.limit() + " " + phrases.name(finding.limit());
        double at = holding.limit().in(unit).value().rounded(3).doubleValue();
        guides.add(new Chart.Guide(phrases.bound().bound(label), at));
      }
    }
    return guides;
  }

  private List<Chart.Marks> marks(List<Drawn> drawn, TimeAxis time, ValueAxis values) {
    double foot = values.axis().min();
    List<Chart.Marker> turns =
        turns().stream()
            .filter(time::holds)
            .map(at -> new Chart.Marker(time.at(at), foot, ""))
            .toList();
    List<Chart.Marker> byHand =
        drawn.stream().flatMap(each -> each.byHand(false).stream()).toList();
    List<Chart.Marker> leftOut =
        drawn.stream().flatMap(each -> each.leftOut(values.axis()).stream()).toList();
    Optional<Chart.Marker> top = highest(drawn).map(each -> each.marker(top(each), label(each)));
    List<Chart.Marker> told =
        byHand.stream().map(each -> top.filter(each::isAt).orElse(each)).toList();
    return List.of(
        new Chart.Marks(phrases.say("record.core.by-hand", "by hand"), Chart.Shape.DIAMOND, told),
        new Chart.Marks(
            phrases.say("record.hold.highest", "highest"),
            Chart.Shape.DOT,
            top.filter(each -> !told.contains(each)).stream().toList()),
        new Chart.Marks(
            phrases.say("record.chart.left-out", "left out"), Chart.Shape.RING, leftOut),
        new Chart.Marks(phrases.word("what", What.TURNED.word()), Chart.Shape.STROKE, turns));
  }

  private List<Long> turns() {
    return lot.all(What.TURNED).stream().map(turn -> turn.time().written().toEpochMilli()).toList();
  }

  private static Optional<Drawn> highest(List<Drawn> drawn) {
    return drawn.stream().max(Comparator.comparingDouble(each -> each.y(top(each))));
  }

  private static int top(Drawn drawn) {
    return Extremes.of(drawn.track()).highest();
  }

  private String label(Drawn drawn) {
    Instant at = Instant.ofEpochMilli(drawn.track().earliest(top(drawn)));
    return phrases.bound().bound(phrases.shortTime(at) + " " + drawn.shown(top(drawn)));
  }

  private String sentence(List<Drawn> drawn, TimeAxis time) {
    List<String> told = new ArrayList<>();
    drawn.forEach(each -> told.add(range(each.track())));
    highest(drawn)
        .ifPresent(
            each -> told.add(phrases.say("record.hold.highest-at", "highest {0}", label(each))));
    guides()
        .forEach(guide -> told.add(phrases.say("record.hold.limit", "limit {0}", guide.label())));
    told.add(
        phrases.say(
            "record.hold.turned",
            "turned {0} times",
            turns().stream().filter(time::holds).count()));
    drawn.forEach(each -> each.gaps().forEach(gap -> told.add(gap.label())));
    return phrases.say(
        "record.hold.alternative",
        "Cooler of lot {0} over the cure, from {1} to {2}: {3}.",
        lot.code(),
        phrases.time(Instant.ofEpochMilli(time.from())),
        phrases.time(Instant.ofEpochMilli(time.to())),
        String.join("; ", told));
  }

  private String range(Track track) {
    return phrases.probe(track) + " " + Extremes.range(track, unit, phrases);
  }
}

package org.flitchbook.record;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Part;
import org.flitchbook.document.Axis;
import org.flitchbook.document.Band;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.document.Curve;
import org.flitchbook.document.Guide;
import org.flitchbook.document.Marker;
import org.flitchbook.document.Point;
import org.flitchbook.document.Shape;
import org.flitchbook.document.Stroke;
import org.flitchbook.document.Tick;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Kind;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** Smoke and chill on one time axis, with the limit lines, the crossings and the hand readings. */
final class CoreChart {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final int HEIGHT = 250;
  private static final int MOST_TICKS = 12;
  private static final int[] HOURS_BETWEEN = {1, 2, 3, 4, 6, 12, 24, 48};

  private final Judgement judgement;
  private final Unit unit;
  private final ZoneId zone;
  private final List<Track> cores;

  CoreChart(DayJudged day, Judgement judgement) {
    this.judgement = judgement;
    this.unit = day.plan().establishment().temperature();
    this.zone = day.plan().establishment().zone();
    this.cores = judgement.lot().tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  Optional<Block> block() {
    List<Track> drawn = new ArrayList<>(cores);
    drawn.addAll(airs());
    long from = drawn.stream().mapToLong(track -> track.earliest(0)).min().orElse(0);
    long to = drawn.stream().mapToLong(track -> track.earliest(track.size() - 1)).max().orElse(0);
    if (cores.isEmpty() || to <= from) {
      return Optional.empty();
    }
    return Optional.of(
        new Chart(
            "Core temperature through smoke and chill",
            alternative(),
            time(from, to),
            temperature(drawn),
            curves(),
            guides(),
            markers(),
            bands(),
            HEIGHT));
  }

  private List<Track> airs() {
    Lot lot = judgement.lot();
    List<Track> airs = new ArrayList<>(lot.tracks(What.CHAMBER_TEMPERATURE, Step.SMOKE));
    airs.addAll(lot.tracks(What.COOLER_TEMPERATURE, Step.CHILL));
    return airs;
  }

  private String alternative() {
    List<String> stages = new ArrayList<>();
    for (Part part : parts()) {
      part.measured()
          .ifPresent(
              measured ->
                  stages.add(
                      part.from()
                          + " to "
                          + part.to()
                          + " took "
                          + Phrases.quantity(measured.value())
                          + ", "
                          + Phrases.bound(measured)
                          + ": "
                          + part.verdict().words()));
    }
    return "Temperature inside and around lot "
        + judgement.lot().code()
        + " over smoke and chill. "
        + (stages.isEmpty() ? "No stage could be clocked." : String.join("; ", stages) + ".");
  }

  private List<Part> parts() {
    return judgement.findings().stream().flatMap(f -> f.parts().stream()).toList();
  }

  private Axis time(long from, long to) {
    int hours = 1;
    for (int each : HOURS_BETWEEN) {
      hours = each;
      if ((to - from) / 3_600_000.0 / each <= MOST_TICKS) {
        break;
      }
    }
    List<Tick> ticks = new ArrayList<>();
    ZonedDateTime at =
        Instant.ofEpochMilli(from).atZone(zone).withMinute(0).withSecond(0).withNano(0);
    at = at.withHour(at.getHour() / Math.min(hours, 24) * Math.min(hours, 24));
    boolean days = !at.toLocalDate().equals(Instant.ofEpochMilli(to).atZone(zone).toLocalDate());
    for (; at.toInstant().toEpochMilli() <= to; at = at.plusHours(hours)) {
      long millis = at.toInstant().toEpochMilli();
      if (millis >= from) {
        ticks.add(
            new Tick(hoursSince(from, millis), CLOCK.format(at), days ? dayOf(at, ticks) : ""));
      }
    }
    return new Axis(
        "Clock time, " + Phrases.zone(Instant.ofEpochMilli(from), zone),
        0,
        hoursSince(from, to),
        ticks);
  }

  /** The date under the first tick of each day. */
  private static String dayOf(ZonedDateTime at, List<Tick> before) {
    return before.isEmpty() || at.getHour() == 0 ? at.toLocalDate().toString() : "";
  }

  private static double hoursSince(long from, long millis) {
    return (millis - from) / 3_600_000.0;
  }

  private long start() {
    List<Track> drawn = new ArrayList<>(cores);
    drawn.addAll(airs());
    return drawn.stream().mapToLong(track -> track.earliest(0)).min().orElse(0);
  }

  private Axis temperature(List<Track> drawn) {
    double highest = 0;
    for (Track track : drawn) {
      for (int i = 0; i < track.size(); i++) {
        highest = Math.max(highest, level(track, i));
      }
    }
    int step = unit == Unit.FAHRENHEIT ? 20 : 10;
    int low = unit == Unit.FAHRENHEIT ? 20 : -10;
    int top = (int) Math.ceil((highest + 1) / step) * step;
    List<Tick> ticks = new ArrayList<>();
    for (int value = low; value <= top; value += step) {
      ticks.add(new Tick(value, String.valueOf(value), second(value)));
    }
    return new Axis(unit.symbol() + ", " + other().symbol() + " small", low, top, ticks);
  }

  private Unit other() {
    return unit == Unit.FAHRENHEIT ? Unit.CELSIUS : Unit.FAHRENHEIT;
  }

  private String second(int value) {
    return Quantity.of(value, unit).in(other()).value().rounded(0).toPlainString();
  }

  private double level(Track track, int index) {
    return Level.drawn(track.level(index, Shift.AS_WRITTEN), unit);
  }

  private List<Curve> curves() {
    List<Curve> curves = new ArrayList<>();
    for (Track track : cores) {
      Stroke stroke = curves.isEmpty() ? Stroke.SOLID : Stroke.DASHED;
      curves.add(new Curve("core " + track.called(), stroke, stretches(track)));
    }
    for (Track track : airs()) {
      boolean chamber = track.what() == What.CHAMBER_TEMPERATURE;
      curves.add(
          new Curve(
              chamber ? "smoker" : "cooler",
              chamber ? Stroke.THIN : Stroke.DOTTED,
              stretches(track)));
    }
    return curves;
  }

  /** A curve is broken where the log has a gap; readings by hand are marked, not joined. */
  private List<List<Point>> stretches(Track track) {
    long from = start();
    List<List<Point>> stretches = new ArrayList<>();
    List<Point> stretch = new ArrayList<>();
    for (int i = 0; i < track.size(); i++) {
      if (track.interval() == 0 || !track.byHand(i)) {
        stretch.add(new Point(hoursSince(from, track.earliest(i)), level(track, i)));
      }
      if (track.interval() > 0 && track.gapAfter(i) && !stretch.isEmpty()) {
        stretches.add(List.copyOf(stretch));
        stretch.clear();
      }
    }
    if (!stretch.isEmpty()) {
      stretches.add(List.copyOf(stretch));
    }
    return stretches;
  }

  private List<Guide> guides() {
    TreeSet<Quantity> levels = new TreeSet<>();
    for (Finding finding : judgement.findings()) {
      if (finding.limit().kind() instanceof Kind.Span span) {
        span.stages().forEach(stage -> levels.addAll(List.of(stage.from(), stage.to())));
      }
      if (finding.limit().kind() instanceof Kind.Bound bound
          && bound.limit().dimension() == org.flitchbook.measure.Dimension.TEMPERATURE) {
        levels.add(bound.limit());
      }
    }
    return levels.stream()
        .map(level -> new Guide(level.toString(), level.in(unit).value().rounded(3).doubleValue()))
        .toList();
  }

  private List<Marker> markers() {
    long from = start();
    List<Marker> markers = new ArrayList<>();
    for (Part part : parts()) {
      mark(markers, part.start(), part);
      if (part.verdict() != org.flitchbook.check.Verdict.PENDING) {
        mark(markers, part.end(), part);
      }
    }
    for (Track track : cores) {
      for (int i = 0; i < track.size(); i++) {
        if (track.byHand(i)) {
          double value = level(track, i);
          markers.add(
              new Marker(
                  Shape.RING,
                  hoursSince(from, track.earliest(i)),
                  value,
                  "by hand " + Level.quantity(track.level(i, Shift.AS_WRITTEN), unit).shown()));
        }
      }
    }
    return markers.stream().distinct().toList();
  }

  /** At the reading itself, which lies beside the limit's line and not on it. */
  private void mark(List<Marker> markers, Optional<Instant> time, Part part) {
    for (Track track : cores) {
      if (track.called().equals(part.probe())) {
        time.ifPresent(at -> markers.add(marker(track, at)));
      }
    }
  }

  private Marker marker(Track track, Instant time) {
    int index = 0;
    while (index + 1 < track.size() && track.earliest(index + 1) <= time.toEpochMilli()) {
      index++;
    }
    return new Marker(
        Shape.DOT,
        hoursSince(start(), track.earliest(index)),
        level(track, index),
        CLOCK.format(time.atZone(zone)));
  }

  private List<Band> bands() {
    long from = start();
    List<Band> bands = new ArrayList<>();
    for (Track track : cores) {
      for (org.flitchbook.sums.Curve.Gap gap : track.gaps()) {
        bands.add(
            new Band(
                hoursSince(from, track.earliest(gap.from())),
                hoursSince(from, track.earliest(gap.to())),
                "gap of " + track.called()));
      }
    }
    return bands;
  }
}

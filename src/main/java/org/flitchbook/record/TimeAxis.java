package org.flitchbook.record;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.document.Chart;
import org.flitchbook.measure.Level;

/**
 * The time axis of a chart, in hours since its beginning: clock times, with the date under the
 * first of them and under each midnight; dates alone where it spans many days.
 *
 * @param to after {@code from}
 */
record TimeAxis(Instant from, Instant to, Phrases phrases) {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("MM-dd", Locale.ROOT);
  private static final double HOUR = 3_600_000.0;
  private static final int DAY = 24 * 60;
  private static final int MOST_TICKS = 12;

  /** Minutes between two ticks; up to a day they divide it. */
  private static final int[] STEPS = {5, 10, 15, 30, 60, 120, 180, 240, 360, 720, DAY, 2 * DAY};

  TimeAxis {
    if (!to.isAfter(from)) {
      throw new IllegalArgumentException("a time axis from " + from + " to " + to);
    }
  }

  /** Empty where it would have no length. */
  static Optional<TimeAxis> of(Instant from, Instant to, Phrases phrases) {
    return to.isAfter(from) ? Optional.of(new TimeAxis(from, to, phrases)) : Optional.empty();
  }

  double at(Instant time) {
    return Duration.between(from, time).toMillis() / HOUR;
  }

  Chart.Marker marker(Reading reading, String label) {
    double y = reading.level().value().rounded(Level.DECIMALS).doubleValue();
    return new Chart.Marker(at(reading.at()), y, label);
  }

  boolean holds(Instant time) {
    return within(time).equals(time);
  }

  /** That time, or the end of the axis that it lies beyond. */
  Instant within(Instant time) {
    Instant notBefore = time.isBefore(from) ? from : time;
    return notBefore.isAfter(to) ? to : notBefore;
  }

  Chart.Axis axis() {
    String label = phrases.say("record.chart.clock", "Clock time, {0}", phrases.zone(from));
    return new Chart.Axis(label, 0, at(to), ticks());
  }

  private int step() {
    double minutes = at(to) * 60;
    for (int step : STEPS) {
      if (minutes / step <= MOST_TICKS) {
        return step;
      }
    }
    return (int) Math.ceil(minutes / (DAY * MOST_TICKS)) * DAY;
  }

  /** From the midnight before it, so that the ticks stand at full hours. */
  private List<Chart.Tick> ticks() {
    int step = step();
    List<Chart.Tick> ticks = new ArrayList<>();
    ZonedDateTime at = from.atZone(phrases.zone()).toLocalDate().atStartOfDay(phrases.zone());
    for (; !at.toInstant().isAfter(to); at = next(at, step)) {
      if (!at.toInstant().isBefore(from)) {
        ticks.add(
            new Chart.Tick(at(at.toInstant()), label(at, step), below(at, step, ticks.isEmpty())));
      }
    }
    return ticks;
  }

  /** By the clock, so that the ticks stand at the same hours on the day that the clocks change. */
  private static ZonedDateTime next(ZonedDateTime at, int step) {
    return step < 60
        ? at.plus(Duration.ofMinutes(step))
        : at.plusDays(step / DAY).plusMinutes(step % DAY);
  }

  private static String label(ZonedDateTime at, int step) {
    return (step < DAY ? CLOCK : DATE).format(at);
  }

  private static String below(ZonedDateTime at, int step, boolean first) {
    boolean midnight = at.toLocalTime().equals(LocalTime.MIDNIGHT);
    if (step < DAY) {
      return first || midnight ? at.toLocalDate().toString() : "";
    }
    return first ? String.valueOf(at.getYear()) : "";
  }
}

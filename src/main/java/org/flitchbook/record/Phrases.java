package org.flitchbook.record;

import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Tone;
import org.flitchbook.input.Severity;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Limit;
import org.flitchbook.sums.Shift;

/** How values, times and verdicts are put into words. */
final class Phrases {

  static final String NOT_RECORDED = "NOT RECORDED";

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  private static final DateTimeFormatter DAY_TIME =
      DateTimeFormatter.ofPattern("MM-dd HH:mm", Locale.ROOT);

  private static final DateTimeFormatter DATE_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private Phrases() {}

  static Tone tone(Verdict verdict) {
    return switch (verdict) {
      case MET -> Tone.PASS;
      case NOT_MET -> Tone.FAIL;
      case NOT_SHOWN -> Tone.DOUBT;
      case PENDING -> Tone.WAIT;
    };
  }

  /** What a fault in the data asks of people. */
  static String follows(Severity severity) {
    return switch (severity) {
      case BROKEN -> "nothing can be judged";
      case STOP -> "stop: no verdict";
      case ASK -> "ask: explain it before release";
      case NOTE -> "note: no verdict changes";
    };
  }

  static String time(Instant time, ZoneId zone) {
    return DATE_TIME.format(time.atZone(zone));
  }

  static String clock(Instant time, ZoneId zone) {
    return CLOCK.format(time.atZone(zone));
  }

  /** Without the year, for a table whose caption has it. */
  static String shortTime(Instant time, ZoneId zone) {
    return DAY_TIME.format(time.atZone(zone));
  }

  /** {@code EST, UTC-05:00}. */
  static String zone(Instant time, ZoneId zone) {
    ZonedDateTime local = time.atZone(zone);
    return DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH).format(local)
        + ", UTC"
        + local.getOffset().getId().replace("Z", "");
  }

  /** A temperature to a tenth of a degree, a share to a tenth of a per cent. */
  static String level(Track track, int index, Unit unit) {
    Quantity level = Level.quantity(track.level(index, Shift.AS_WRITTEN), unit);
    return level.value().rounded(1).setScale(1, RoundingMode.UNNECESSARY).toPlainString()
        + " "
        + unit;
  }

  /** {@code at most 200 ppm}. */
  static String bound(Measured measured) {
    return (measured.atMost() ? "at most " : "at least ") + quantity(measured.limit());
  }

  /** Times of more than an hour as {@code 1 h 14 min}; everything else as it is. */
  static String quantity(Quantity quantity) {
    boolean clock = quantity.unit() == Unit.MINUTE || quantity.unit() == Unit.HOUR;
    boolean whole = quantity.shown().equals(quantity + "");
    return clock && !(quantity.unit() == Unit.HOUR && whole)
        ? hoursAndMinutes(quantity)
        : quantity.shown();
  }

  private static String hoursAndMinutes(Quantity time) {
    Quantity minutes = time.in(Unit.MINUTE);
    if (minutes.isBelow(Quantity.of(60, Unit.MINUTE))) {
      return minutes.shown();
    }
    long hours = minutes.in(Unit.HOUR).value().floor().longValueExact();
    Quantity rest = minutes.minus(Quantity.of(hours * 60, Unit.MINUTE));
    return hours + " h" + (rest.value().signum() == 0 ? "" : " " + rest.shown());
  }

  static String worst(Finding finding) {
    return finding.measured().map(measured -> quantity(measured.value())).orElse("–");
  }

  /** While a limit is pending there is nothing to spare or to lack yet. */
  static String margin(Finding finding) {
    return finding
        .measured()
        .filter(m -> finding.verdict() != Verdict.PENDING)
        .map(measured -> signed(measured.margin()))
        .orElse("–");
  }

  private static String signed(Quantity margin) {
    return margin.value().signum() < 0
        ? "−" + quantity(new Quantity(margin.value().abs(), margin.unit()))
        : quantity(margin);
  }

  /** What the plan says to do where the limit is missed. */
  static Optional<String> planned(Limit limit) {
    return Optional.of(limit.monitoring().ifMissed()).filter(text -> !text.isEmpty());
  }

  static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}

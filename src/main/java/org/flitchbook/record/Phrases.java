package org.flitchbook.record;

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
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Limit;

/** How values, times and verdicts are put into words. */
final class Phrases {

  static final String NOT_RECORDED = "NOT RECORDED";

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

  static String time(Instant time, ZoneId zone) {
    return DATE_TIME.format(time.atZone(zone));
  }

  /** {@code EST, UTC-05:00}. */
  static String zone(Instant time, ZoneId zone) {
    ZonedDateTime local = time.atZone(zone);
    return DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH).format(local)
        + ", UTC"
        + local.getOffset().getId().replace("Z", "");
  }

  /** {@code at most 200 ppm}. */
  static String bound(Measured measured) {
    return (measured.atMost() ? "at most " : "at least ") + quantity(measured.limit());
  }

  /** Times of an hour and more as {@code 1 h 14 min}; everything else as it is. */
  static String quantity(Quantity quantity) {
    Quantity hour = Quantity.of(1, Unit.HOUR);
    boolean long_ =
        quantity.dimension() == Dimension.TIME
            && quantity.unit() == Unit.MINUTE
            && !quantity.isBelow(hour);
    if (!long_) {
      return quantity.shown();
    }
    long hours = quantity.in(Unit.HOUR).value().floor().longValueExact();
    Quantity rest = quantity.minus(Quantity.of(hours * 60, Unit.MINUTE));
    return hours + " h" + (rest.value().signum() == 0 ? "" : " " + rest.shown());
  }

  static String worst(Finding finding) {
    return finding.measured().map(measured -> quantity(measured.value())).orElse("–");
  }

  static String margin(Finding finding) {
    return finding.measured().map(measured -> signed(measured.margin())).orElse("–");
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

package org.flitchbook.reading;

import java.time.DateTimeException;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds in the heading of a log's time the offset that it names, such as {@code GMT+01:00}. */
final class ZoneWord {

  private static final Pattern OFFSET =
      Pattern.compile("(?i)\\b(?:GMT|UTC)\\b ?([-+]\\d{1,2})?(?::?(\\d{2}))?");

  private ZoneWord() {}

  static Optional<ZoneOffset> in(String heading) {
    Matcher named = OFFSET.matcher(heading.replace('\u2212', '-'));
    if (!named.find()) {
      return Optional.empty();
    }
    int hours = named.group(1) == null ? 0 : Integer.parseInt(named.group(1));
    int minutes =
        named.group(1) == null || named.group(2) == null ? 0 : Integer.parseInt(named.group(2));
    try {
      boolean west = named.group(1) != null && named.group(1).startsWith("-");
      return Optional.of(ZoneOffset.ofHoursMinutes(hours, west ? -minutes : minutes));
    } catch (DateTimeException noOffset) {
      return Optional.empty();
    }
  }
}

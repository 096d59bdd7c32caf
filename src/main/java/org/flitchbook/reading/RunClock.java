package org.flitchbook.reading;

import java.time.Instant;
import java.time.ZoneId;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.message.Message;

/**
 * Times as hours and minutes run since a stated start, such as {@code 0:07:30}.
 *
 * @param form {@code h:mm:ss}, {@code h:mm} or {@code mm:ss}
 * @param words what is counted, for a diagnostic
 * @param start milliseconds since 1970
 */
record RunClock(String form, Message words, ZoneId zone, long start) implements LogClock {

  private static final Pattern RUN = Pattern.compile("(\\d{1,5}):([0-5]\\d)(?::([0-5]\\d))?");

  @Override
  public boolean isLocal() {
    return false;
  }

  @Override
  public OptionalLong read(String text) {
    Matcher run = RUN.matcher(text);
    boolean three = form.equals("h:mm:ss");
    if (!run.matches() || three != (run.group(3) != null)) {
      return OptionalLong.empty();
    }
    long upper = Long.parseLong(run.group(1)) * 60 + Long.parseLong(run.group(2));
    long seconds =
        three
            ? upper * 60 + Long.parseLong(run.group(3))
            : form.equals("h:mm") ? upper * 60 : upper;
    return OptionalLong.of(start + seconds * 1000);
  }

  @Override
  public String shown(long time) {
    return Instant.ofEpochMilli(time).atZone(zone).toOffsetDateTime().toString();
  }

  @Override
  public Message expected() {
    return words;
  }

  @Override
  public long precisionMillis(int places) {
    return form.equals("h:mm") ? 60_000 : 0;
  }
}

package org.flitchbook.check;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A log written short, with parts set off by {@code ;}. {@code 08:00:00 40} is one reading; {@code
 * 08:00:00..08:10:00/60 40} one every 60 s, both ends included; {@code 08:00:00..08:10:00/60
 * 40>130} the same on a straight line. Times without seconds make a log written to the minute; a
 * time may have a date before it, else it is of the day.
 */
record Log(List<LocalDateTime> times, List<String> levels, boolean seconds) {

  static Log of(String text) {
    List<LocalDateTime> times = new ArrayList<>();
    List<String> levels = new ArrayList<>();
    for (String part : text.split(";", -1)) {
      String trimmed = part.strip();
      int cut = trimmed.lastIndexOf(' ');
      add(trimmed.substring(0, cut).strip(), trimmed.substring(cut + 1), times, levels);
    }
    String first = text.strip().split("[ ./]", 2)[0];
    return new Log(times, levels, first.length() == 8);
  }

  private static void add(
      String when, String what, List<LocalDateTime> times, List<String> levels) {
    if (!when.contains("..")) {
      times.add(time(when));
      levels.add(what);
      return;
    }
    String[] ends = when.split("\\.\\.|/", -1);
    LocalDateTime from = time(ends[0]);
    long step = Long.parseLong(ends[2]);
    long count = Duration.between(from, time(ends[1])).toSeconds() / step;
    for (long i = 0; i <= count; i++) {
      times.add(from.plusSeconds(i * step));
      levels.add(level(what, i, count));
    }
  }

  private static String level(String what, long index, long count) {
    if (!what.contains(">")) {
      return what;
    }
    String[] ends = what.split(">", -1);
    BigDecimal from = new BigDecimal(ends[0]);
    BigDecimal rise = new BigDecimal(ends[1]).subtract(from);
    return from.add(
            rise.multiply(BigDecimal.valueOf(index))
                .divide(BigDecimal.valueOf(count), 6, RoundingMode.HALF_EVEN))
        .toString();
  }

  private static LocalDateTime time(String written) {
    String full = written.contains("-") ? written : Bench.DAY + " " + written;
    return LocalDateTime.parse(full.strip().replace(' ', 'T'));
  }

  String pattern() {
    return seconds ? "yyyy-MM-dd HH:mm:ss" : "yyyy-MM-dd HH:mm";
  }

  String csv(String column) {
    DateTimeFormatter format = DateTimeFormatter.ofPattern(pattern(), Locale.ROOT);
    StringBuilder text = new StringBuilder("Time," + column + "\n");
    for (int i = 0; i < times.size(); i++) {
      text.append(format.format(times.get(i))).append(',').append(levels.get(i)).append('\n');
    }
    return text.toString();
  }
}

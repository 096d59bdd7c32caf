package org.flitchbook.check;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.flitchbook.check.LoggedLot.Row;

/** Writes a {@link LoggedLot} as a book: its sheets, its log or logs, and how to read them. */
final class LoggedBook {

  static final String COOLING = "us.b99.cooling-1";
  static final String FINISH = "finish";

  private static final String SECONDS = "yyyy-MM-dd HH:mm:ss";
  private static final String MINUTES = "yyyy-MM-dd HH:mm";

  private final LoggedLot lot;
  private final TrueLot truth;
  private final String pattern;

  private LoggedBook(LoggedLot lot) {
    this.lot = lot;
    this.truth = lot.truth();
    this.pattern = lot.form().minutes() ? MINUTES : SECONDS;
  }

  static Bench of(LoggedLot lot) {
    return new LoggedBook(lot).bench();
  }

  private Bench bench() {
    Bench bench =
        Bench.book()
            .on(lot.wall(lot.seconds()).toLocalDate().toString())
            .doubting()
            .rule(COOLING)
            .own(
                FINISH,
                "smoke",
                "\"kind\": \"floor\", \"quantity\": \"peak internal temperature\", \"atLeast\":"
                    + " \"145 °F\"")
            .write(
                "smoke," + wall(0) + ",into smoke,SM",
                "smoke," + wall(truth.out() * 60L) + ",out of smoke",
                "chill," + wall(truth.into() * 60L) + ",into chill,F2",
                "chill," + wall(lot.seconds()) + ",out of chill");
    hand(bench, "smoke", truth.out() - 1, lot.mistyped());
    hand(bench, "chill", truth.end() - 2, 0);
    export(bench);
    return bench;
  }

  /** Three makers of four read by hand, too; whoever mistypes it did. */
  private void hand(Bench bench, String sheet, int minute, double off) {
    if (lot.random().nextInt(4) > 0 || off > 0) {
      bench.write(
          String.format(
              Locale.ROOT,
              "%s,%s,internal temperature,thickest,%.1f,°F,MA,HT-0",
              sheet,
              wall(minute * 60L),
              truth.core(minute) + off));
    }
  }

  private String wall(long second) {
    return lot.wall(second).toOffsetDateTime().toString().replace('T', ' ');
  }

  private void export(Bench bench) {
    List<Row> rows = lot.rows();
    long until = rows.isEmpty() ? 0 : rows.get(rows.size() - 1).second();
    long again = lot.form().secondExport();
    if (again < until) {
      write(bench, "p1-a", 0, Math.min(until, again + 5400));
      write(bench, "p1-b", again, until);
    } else {
      write(bench, "p1", 0, until);
    }
  }

  private void write(Bench bench, String name, long from, long until) {
    boolean two = lot.form().two();
    String head = two ? "Time,P1,P2,Air\n" : "Time,P1,Air\n";
    StringBuilder csv = new StringBuilder(head);
    int lines = 0;
    for (Row row : lot.rows()) {
      if (row.second() >= from && row.second() <= until) {
        if (lines == 0 && lot.skippedUntil() > 0 && row.second() >= lot.skippedUntil()) {
          lines = Math.toIntExact(csv.toString().lines().count());
          csv.append(head);
        }
        csv.append(row.time().orElseGet(() -> clock(row.second())))
            .append(',')
            .append(lot.core(row))
            .append(two ? "," + lot.thin(row) : "")
            .append(',')
            .append(lot.written(row.air(), row.second()))
            .append('\n');
      }
    }
    bench.file(name + ".csv", csv.toString(), layout(name, lines));
  }

  private String clock(long second) {
    String text = lot.clock(second).toString().replace('T', ' ');
    return text.length() < SECONDS.length() && !lot.form().minutes()
        ? text + ":00"
        : text.substring(0, pattern.length());
  }

  private String layout(String name, int skip) {
    String unit = lot.form().stated();
    String core =
        "{\"column\": \"%s\", \"what\": \"internal temperature\", \"unit\": \"%s\", \"item\":"
            + " \"%s\", \"lot\": \"A1\"}";
    String air =
        "{\"column\": \"Air\", \"what\": \"%s\", \"unit\": \"%s\", \"place\": \"%s\", \"%s\":"
            + " \"%s\"}";
    return """
    {"files": "%s.csv", "instrument": "LG-A", "skip": %d,
     "time": {"column": "Time", "pattern": "%s", "zone": "America/New_York"},
     "columns": [%s, %s%s, %s]}\
    """
        .formatted(
            name,
            skip,
            pattern,
            core.formatted("P1", unit, "P1"),
            lot.form().two() ? core.formatted("P2", unit, "P2") + ", " : "",
            air.formatted("chamber temperature", unit, "SM", "until", cut(truth.out())),
            air.formatted("cooler temperature", unit, "F2", "from", cut(truth.into())));
  }

  /** A time in logs.json is read as one of the log is; in the doubled hour with its offset. */
  private String cut(int minute) {
    ZonedDateTime time = lot.wall(minute * 60L);
    boolean twice = Bench.ZONE.getRules().getValidOffsets(time.toLocalDateTime()).size() > 1;
    return DateTimeFormatter.ofPattern(twice ? pattern + "XXX" : pattern, Locale.ROOT).format(time);
  }
}

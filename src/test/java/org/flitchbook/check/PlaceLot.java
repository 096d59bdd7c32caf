package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * A place whose air, water or humidity is known at every minute of a step of ten hours, on its
 * right side of the limit but for one time in every second lot; and the log of it, which can be
 * damaged.
 */
final class PlaceLot {

  static final int MINUTES = 600;

  /** So long may nothing be read. */
  static final int EVERY = 240;

  /** What is logged, and by how much its usual level lies inside the limit. */
  enum Kind {
    FRIDGE("cure", "F1", "cooler temperature", "into cure", "out of cure", 41, true),
    DRYING_ROOM("dry", "F2", "cooler temperature", "into drying", "out of drying", 59, true),
    HUMIDITY("dry", "F2", "humidity", "into drying", "out of drying", 65, false),
    SMOKER("smoke", "SM", "chamber temperature", "into smoke", "out of smoke", 160, false),
    WATER("soak", "SK", "water temperature", "into soak", "out of soak", 50, true);

    private final String sheet;
    private final String place;
    private final String what;
    private final String into;
    private final String out;
    private final double limit;
    private final boolean ceiling;

    Kind(
        String sheet,
        String place,
        String what,
        String into,
        String out,
        double limit,
        boolean ceiling) {
      this.sheet = sheet;
      this.place = place;
      this.what = what;
      this.into = into;
      this.out = out;
      this.limit = limit;
      this.ceiling = ceiling;
    }

    private String unit(boolean celsius) {
      return this == HUMIDITY ? "%" : celsius ? "°C" : "°F";
    }
  }

  /**
   * A row of the log.
   *
   * @param cell as it is written
   */
  record Row(int minute, String cell) {}

  private final Kind kind;
  private final SplittableRandom random;
  private final boolean celsius;
  private final int from;
  private final int until;
  private final double beyond;
  private final int interval;
  private List<Row> rows = new ArrayList<>();
  private String more = "";
  private String heading;
  private int headedAt;

  PlaceLot(SplittableRandom random, boolean misses) {
    this.random = random;
    this.kind = Kind.values()[random.nextInt(Kind.values().length)];
    this.celsius = random.nextInt(3) == 0;
    this.interval = List.of(1, 2, 5, 10).get(random.nextInt(4));
    this.from = random.nextInt(60, 300);
    this.until = misses ? from + random.nextInt(20, 240) : from;
    this.beyond = random.nextDouble(6, 25);
    this.heading = "Time,Log";
    for (int minute = 0; minute <= MINUTES; minute += interval) {
      rows.add(new Row(minute, written(level(minute))));
    }
  }

  /** What it truly is; inside it is well inside, so that no error of a logger decides. */
  private double level(int minute) {
    double inside = 4 + 0.6 * TrueLot.sawtooth(minute, 25);
    double by = minute >= from && minute < until ? -beyond : inside;
    return kind.ceiling ? kind.limit - by : kind.limit + by;
  }

  private String written(double level) {
    double shown = celsius && kind != Kind.HUMIDITY ? (level - 32) / 1.8 : level;
    return String.format(Locale.ROOT, "%.1f", shown);
  }

  SplittableRandom random() {
    return random;
  }

  boolean misses() {
    return until > from;
  }

  int from() {
    return from;
  }

  int until() {
    return until;
  }

  List<Row> rows() {
    return rows;
  }

  void rows(List<Row> other) {
    rows = other;
  }

  String unit() {
    return kind.unit(celsius);
  }

  /** Whether a number would be a level of the place on the wrong side of its limit. */
  private boolean isOutside(double number) {
    double level = celsius && kind != Kind.HUMIDITY ? 32 + 1.8 * number : number;
    return kind.ceiling ? level > kind.limit : level < kind.limit;
  }

  /** From some minute on the heading stands again, and {@code skip} leaves out all above it. */
  void skippedUntil(int minute) {
    headedAt = minute;
    more = "\"skip\": " + (1 + rows.stream().filter(row -> row.minute < minute).count()) + ",";
  }

  /** The row before some minute is taken for the heading, and {@code skip} leaves out all above. */
  void headedByRow(int minute) {
    Row row = rows.stream().filter(each -> each.minute < minute).reduce((a, b) -> b).orElseThrow();
    more = "\"skip\": " + rows.stream().filter(each -> each.minute < minute).count() + ",";
    heading = clock(row.minute) + "," + row.cell;
  }

  /** The first rows are passed over, in a log whose columns are called by their numbers. */
  void numbered(int minute) {
    more =
        "\"heading\": \"none\", \"skip\": "
            + (1 + rows.stream().filter(row -> row.minute < minute).count())
            + ",";
    heading = "1,2";
  }

  private static String clock(int minute) {
    return String.format(Locale.ROOT, "2026-02-24 %02d:%02d:00", 8 + minute / 60, minute % 60);
  }

  /** Whoever takes each plain number that is read, and minds nothing else, sees no miss. */
  boolean looksGood() {
    int first = more.isEmpty() ? 0 : firstRead();
    return rows.stream()
        .filter(row -> row.minute >= first && row.cell.matches("[-+]?[0-9]+(\\.[0-9]+)?"))
        .noneMatch(row -> isOutside(Double.parseDouble(row.cell)));
  }

  private int firstRead() {
    int skipped = Integer.parseInt(more.replaceAll(".*\"skip\": (\\d+),", "$1")) - 1;
    return rows.get(Math.min(skipped, rows.size() - 1)).minute;
  }

  private String csv() {
    StringBuilder csv = new StringBuilder("Time,Log\n");
    for (Row row : rows) {
      if (headedAt > 0 && row.minute >= headedAt) {
        csv.append("Time,Log\n");
        headedAt = 0;
      }
      csv.append(clock(row.minute)).append(',').append(row.cell).append('\n');
    }
    return csv.toString();
  }

  Judgement judge() {
    String[] words = heading.split(",", 2);
    String limit =
        "\"kind\": \"holding\", \"what\": \"%s\", \"%s\": \"%s %s\", \"every\": \"4 h\""
            .formatted(
                kind.what,
                kind.ceiling ? "atMost" : "atLeast",
                (int) kind.limit,
                kind == Kind.HUMIDITY ? "%" : "°F");
    return Bench.book()
        .doubting()
        .own("held", kind.sheet, limit)
        .write(
            kind.sheet + ",08:00:00," + kind.into + "," + kind.place,
            kind.sheet + ",18:00:00," + kind.out)
        .write(byHand("08:00:10"), byHand("17:59:50"))
        .file(
            "place.csv",
            csv(),
            """
            {"files": "place.csv", "instrument": "LG-H", %s
             "time": {"column": "%s", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
             "columns": [{"column": "%s", "what": "%s", "unit": "%s", "place": "%s"}]}\
            """
                .formatted(
                    more, words[0], words[1].replace("\"", "\\\""), kind.what, unit(), kind.place))
        .judge();
  }

  /** Read at the ends of the step, so that the log alone says what was between. */
  private String byHand(String time) {
    double level = kind.ceiling ? kind.limit - 4 : kind.limit + 4;
    boolean humid = kind == Kind.HUMIDITY;
    return String.format(
        Locale.ROOT,
        "%s,%s,%s,%s,%.1f,%s,MA,%s",
        kind.sheet,
        time,
        kind.what,
        kind.place,
        level,
        humid ? "%" : "°F",
        humid ? "LG-H" : "HT-0");
  }

  @Override
  public String toString() {
    return kind
        + " "
        + unit()
        + " "
        + from
        + ".."
        + until
        + " "
        + more
        + rows.stream().map(Row::cell).distinct().limit(12).collect(Collectors.joining(" "));
  }
}

package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.flitchbook.check.LoggedLot.Row;

/** What happens to logs. */
enum Damage {
  PROBE_OUT("the probe falls out", Damage::probeOut),
  PROBE_OUT_A_WHILE("the probe falls out and is put back", Damage::probeOutAWhile),
  NEVER_IN("the probe lies in the air from the load or the chill on", Damage::neverIn),
  SWAPPED("core and air swapped", Damage::swapped),
  STUCK("the log stuck", Damage::stuck),
  GAP("a gap over a crossing", Damage::gap),
  BEGINS_LATE("the log begins late", Damage::beginsLate),
  ENDS_EARLY("the log ends early", Damage::endsEarly),
  AUTUMN("the hour of autumn", Damage::autumn),
  CLOCK("the logger's clock off", Damage::clock),
  UNIT("the unit mistaken", LoggedLot::mistakenUnit),
  ERRORS("rows of error values", Damage::errors),
  WARMED("warmed again", lot -> {}),
  WARMED_UNSEEN("warmed again in a gap", Damage::unseen),
  ROUNDED("rounded to whole degrees", LoggedLot::rounded),
  DROPPED("rows dropped", Damage::dropped),
  TWICE("rows twice", Damage::twice),
  OVERLAPPING("two exports that overlap", Damage::overlapping);

  private final String told;

  @SuppressWarnings("ImmutableEnumChecker")
  private final Consumer<LoggedLot> damage;

  Damage(String told, Consumer<LoggedLot> damage) {
    this.told = told;
    this.damage = damage;
  }

  String told() {
    return told;
  }

  boolean warms() {
    return this == WARMED || this == WARMED_UNSEEN;
  }

  void on(LoggedLot lot) {
    damage.accept(lot);
  }

  private static void change(LoggedLot lot, long from, long until, UnaryOperator<Row> change) {
    lot.rows(
        lot.rows().stream()
            .map(row -> row.second() >= from && row.second() < until ? change.apply(row) : row)
            .toList());
  }

  private static void keep(LoggedLot lot, Predicate<Row> kept) {
    lot.rows(lot.rows().stream().filter(kept).toList());
  }

  private static Row inAir(LoggedLot lot, Row row) {
    return new Row(row.second(), row.air() + lot.noise(0.3), row.air(), row.text());
  }

  private static long moment(LoggedLot lot) {
    return lot.random().nextLong(lot.seconds() / 10, lot.seconds() * 95 / 100);
  }

  private static void probeOut(LoggedLot lot) {
    change(lot, moment(lot), Long.MAX_VALUE, row -> inAir(lot, row));
  }

  private static void probeOutAWhile(LoggedLot lot) {
    long from = moment(lot);
    change(lot, from, from + 60L * lot.random().nextInt(5, 150), row -> inAir(lot, row));
  }

  private static void neverIn(LoggedLot lot) {
    long from = lot.random().nextBoolean() ? 0 : lot.truth().into() * 60L;
    change(lot, from, Long.MAX_VALUE, row -> inAir(lot, row));
  }

  private static void swapped(LoggedLot lot) {
    long from = List.of(0L, lot.truth().into() * 60L, moment(lot)).get(lot.random().nextInt(3));
    change(
        lot, from, Long.MAX_VALUE, row -> new Row(row.second(), row.air(), row.core(), row.text()));
  }

  private static void stuck(LoggedLot lot) {
    long from = moment(lot);
    double level = lot.truth().core(from / 60.0);
    change(
        lot,
        from,
        from + 60L * lot.random().nextInt(20, 200),
        row -> new Row(row.second(), level, row.air(), row.text()));
  }

  /** The second at which the core passes a level as it chills. */
  private static long crossing(LoggedLot lot, double level) {
    int minute = lot.truth().end();
    while (minute > lot.truth().out() && lot.truth().core(minute) < level) {
      minute--;
    }
    return minute * 60L;
  }

  private static void gap(LoggedLot lot) {
    double level = List.of(130.0, 80.0, 40.0).get(lot.random().nextInt(3));
    long at = crossing(lot, level);
    long from = at - 60L * lot.random().nextInt(90);
    long until = at + 60L * lot.random().nextInt(90);
    keep(lot, row -> row.second() < from || row.second() > until);
  }

  private static void beginsLate(LoggedLot lot) {
    long from = (lot.truth().out() + lot.random().nextInt(-30, 150)) * 60L;
    keep(lot, row -> row.second() >= from);
  }

  private static void endsEarly(LoggedLot lot) {
    long until = crossing(lot, lot.random().nextDouble(38, 90));
    keep(lot, row -> row.second() <= until);
  }

  private static void autumn(LoggedLot lot) {
    lot.clockGoesBackAfter(lot.random().nextLong(lot.truth().out() * 60L, lot.seconds()));
  }

  private static void clock(LoggedLot lot) {
    long by = 60L * lot.random().nextInt(5, 50);
    lot.clockLate(lot.random().nextBoolean() ? by : -by);
  }

  private static final List<String> ERRORS_WRITTEN =
      List.of("-127", "185.0", "32.0", "999.9", "3276.7", "-196.6", "ERR", "---", "");

  private static void errors(LoggedLot lot) {
    for (int run = lot.random().nextInt(1, 12); run > 0; run--) {
      String text = ERRORS_WRITTEN.get(lot.random().nextInt(ERRORS_WRITTEN.size()));
      long from = moment(lot);
      long until = from + 60L * lot.random().nextInt(1, 6);
      change(lot, from, until, row -> new Row(row.second(), row.core(), row.air(), text));
    }
  }

  private static void unseen(LoggedLot lot) {
    long from = lot.truth().warmedFrom() * 60L - 60L * lot.random().nextInt(20);
    long last = (lot.truth().end() - 15) * 60L;
    long until = lot.truth().warmedUntil() * 60L + 60L * lot.random().nextInt(120);
    keep(lot, row -> row.second() < from || row.second() > Math.min(until, last));
  }

  private static void dropped(LoggedLot lot) {
    int share = lot.random().nextInt(5, 50);
    keep(lot, row -> lot.random().nextInt(100) >= share);
  }

  private static void twice(LoggedLot lot) {
    List<Row> rows = new ArrayList<>();
    for (Row row : lot.rows()) {
      rows.add(row);
      if (lot.random().nextInt(50) == 0) {
        rows.add(row);
      }
    }
    lot.rows(rows);
  }

  private static void overlapping(LoggedLot lot) {
    lot.exportedAgainFrom(moment(lot));
  }

  /** One or two of them. */
  static List<Damage> some(SplittableRandom random) {
    Damage first = values()[random.nextInt(values().length)];
    Damage second = values()[random.nextInt(values().length)];
    return random.nextBoolean() || first == second ? List.of(first) : List.of(first, second);
  }
}

package org.flitchbook.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.flitchbook.check.LoggedLot.Form;
import org.flitchbook.check.LoggedLot.Row;

/** What happens to logs, and to those who keep them. */
enum Damage {
  PROBE_OUT("the probe falls out", Damage::probeOut),
  PROBE_OUT_A_WHILE("the probe falls out and is put back", Damage::probeOutAWhile),
  PULLED_AT_FINISH("the probe is pulled at the finish and put back", Damage::pulledAtFinish),
  DRAWN("the probe is drawn before the log ends", Damage::drawn),
  NEVER_IN("the probe lies in the air from the load or the chill on", Damage::neverIn),
  SLIPPED("the probe slips most of the way out", Damage::slipped),
  SWAPPED("core and air are swapped", Damage::swapped),
  OTHER_PROBES("the two probes are swapped", Damage::otherProbes),
  ONE_SILENT("one of two probes falls silent", Damage::oneSilent),
  STUCK("the log sticks", Damage::stuck),
  GAP("a gap over a crossing", Damage::gap),
  BEGINS_LATE("the log begins late", Damage::beginsLate),
  ENDS_EARLY("the log ends early", Damage::endsEarly),
  AUTUMN("the hour of autumn", Damage::autumn),
  SPRING("the hour of spring", Damage::spring),
  CLOCK("the logger's clock is off", Damage::clock),
  CLOCK_SET("the clock is set while it runs", Damage::clockSet),
  UNIT("the unit is mistaken", Damage::unit),
  UNIT_CHANGED("the unit changes while it runs", Damage::unitChanged),
  ERRORS("rows of error values", Damage::errors),
  WARMED("warmed again", lot -> {}),
  WARMED_UNSEEN("warmed again in a gap", Damage::unseen),
  FIRE_OUT("the fire dies", lot -> {}),
  LID("the lid is opened", Damage::lid),
  ROUNDED("rounded to whole degrees", Damage::rounded),
  SECONDS_CUT("a spreadsheet cut the seconds", Damage::secondsCut),
  HASHES("a spreadsheet wrote ##### for times or levels", Damage::hashes),
  DROPPED("rows are missing", Damage::dropped),
  TWICE("rows stand twice", Damage::twice),
  TWICE_APART("a time stands twice, with another level", Damage::twiceApart),
  OVERLAPPING("two exports overlap", Damage::overlapping),
  MISTYPED("the hand reading at the finish is mistyped", Damage::mistyped),
  CELLS("readings are no plain numbers", Damage::cells),
  CODES("codes of sensors, and impossible cold", Damage::codes),
  SKIPPED("skip is too large", Damage::skipped);

  /** They came later, and have lots of their own. */
  private static final List<Damage> OF_CELLS = List.of(CELLS, CODES, SKIPPED);

  private static final List<Damage> OTHERS =
      Arrays.stream(values()).filter(damage -> !OF_CELLS.contains(damage)).toList();

  private static final List<String> ERRORS_WRITTEN =
      List.of(
          "-127", "-127.0", "185.0", "85.0", "32.0", "0.0", "999.9", "3276.7", "-196.6", "-50.0",
          "1372", "11.3", "242.8", "ERR", "---", "OPEN", "");

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
    return row.of(row.air() + lot.noise(0.3));
  }

  private static long moment(LoggedLot lot) {
    return lot.random().nextLong(lot.seconds() / 10, lot.seconds() * 95 / 100);
  }

  private static long minutes(LoggedLot lot, int least, int most) {
    return 60L * lot.random().nextInt(least, most);
  }

  private static void probeOut(LoggedLot lot) {
    change(lot, moment(lot), Long.MAX_VALUE, row -> inAir(lot, row));
  }

  private static void probeOutAWhile(LoggedLot lot) {
    long from = moment(lot);
    change(lot, from, from + minutes(lot, 5, 150), row -> inAir(lot, row));
  }

  private static void pulledAtFinish(LoggedLot lot) {
    long from = lot.truth().out() * 60L - minutes(lot, 1, 10);
    change(lot, from, from + minutes(lot, 3, 25), row -> inAir(lot, row));
  }

  private static void drawn(LoggedLot lot) {
    change(lot, lot.seconds() - minutes(lot, 1, 40), Long.MAX_VALUE, row -> row.of(68));
  }

  private static void neverIn(LoggedLot lot) {
    long from = lot.random().nextBoolean() ? 0 : lot.truth().into() * 60L;
    change(lot, from, Long.MAX_VALUE, row -> inAir(lot, row));
  }

  private static void slipped(LoggedLot lot) {
    double part = lot.random().nextDouble(0.6, 0.95);
    change(
        lot,
        moment(lot),
        Long.MAX_VALUE,
        row -> row.of(row.core() + part * (row.air() - row.core())));
  }

  private static void swapped(LoggedLot lot) {
    long from = List.of(0L, lot.truth().into() * 60L, moment(lot)).get(lot.random().nextInt(3));
    change(lot, from, Long.MAX_VALUE, Row::swapped);
  }

  private static void two(LoggedLot lot) {
    Form as = lot.form();
    lot.form(new Form(true, as.step(), as.celsius(), as.stated(), as.minutes(), as.secondExport()));
  }

  private static void otherProbes(LoggedLot lot) {
    two(lot);
    change(lot, moment(lot), Long.MAX_VALUE, Row::otherProbes);
  }

  private static void oneSilent(LoggedLot lot) {
    two(lot);
    long from = lot.random().nextInt(3) == 0 ? 0 : moment(lot);
    change(lot, from, Long.MAX_VALUE, row -> row.written(""));
  }

  private static void stuck(LoggedLot lot) {
    long from = moment(lot);
    String level = lot.written(lot.truth().core(from / 60.0), from);
    change(lot, from, from + minutes(lot, 20, 200), row -> row.written(level));
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
    long from = at - minutes(lot, 0, 90);
    long until = at + minutes(lot, 0, 90);
    keep(lot, row -> row.second() < from || row.second() > until);
  }

  private static void beginsLate(LoggedLot lot) {
    long from = lot.truth().out() * 60L + minutes(lot, -30, 150);
    keep(lot, row -> row.second() >= from);
  }

  private static void endsEarly(LoggedLot lot) {
    long until = crossing(lot, lot.random().nextDouble(38, 90));
    keep(lot, row -> row.second() <= until);
  }

  private static void autumn(LoggedLot lot) {
    long from = lot.truth().out() * 60L;
    lot.clockChangesAfter(lot.random().nextLong(from, lot.seconds()), "2026-11-01");
  }

  private static void spring(LoggedLot lot) {
    long from = lot.truth().out() * 60L;
    lot.clockChangesAfter(lot.random().nextLong(from, lot.seconds()), "2026-03-08");
  }

  private static void clock(LoggedLot lot) {
    lot.clockLate(either(lot, minutes(lot, 5, 90)));
  }

  private static void clockSet(LoggedLot lot) {
    lot.clockSet(moment(lot), either(lot, minutes(lot, 5, 90)));
  }

  private static long either(LoggedLot lot, long by) {
    return lot.random().nextBoolean() ? by : -by;
  }

  private static void unit(LoggedLot lot) {
    Form as = lot.form();
    String other = as.celsius() ? "°F" : "°C";
    lot.form(new Form(as.two(), as.step(), as.celsius(), other, as.minutes(), as.secondExport()));
  }

  private static void unitChanged(LoggedLot lot) {
    lot.otherUnitFrom(moment(lot));
  }

  private static void errors(LoggedLot lot) {
    for (int run = lot.random().nextInt(1, 12); run > 0; run--) {
      String text = ERRORS_WRITTEN.get(lot.random().nextInt(ERRORS_WRITTEN.size()));
      long from = moment(lot);
      change(lot, from, from + minutes(lot, 1, 6), row -> row.written(text));
    }
  }

  private static void unseen(LoggedLot lot) {
    long from = lot.truth().warmedFrom() * 60L - minutes(lot, 0, 20);
    long last = (lot.truth().end() - 15) * 60L;
    long until = lot.truth().warmedUntil() * 60L + minutes(lot, 0, 120);
    keep(lot, row -> row.second() < from || row.second() > Math.min(until, last));
  }

  private static void lid(LoggedLot lot) {
    long from = lot.random().nextLong(1800, lot.truth().out() * 60L - 900);
    change(
        lot,
        from,
        from + minutes(lot, 4, 12),
        row ->
            new Row(row.second(), row.core(), row.thin(), row.air() - 48, row.text(), row.time()));
  }

  private static void rounded(LoggedLot lot) {
    Form as = lot.form();
    lot.form(new Form(as.two(), 1, as.celsius(), as.stated(), as.minutes(), as.secondExport()));
  }

  private static void secondsCut(LoggedLot lot) {
    Form as = lot.form();
    lot.form(new Form(as.two(), as.step(), as.celsius(), as.stated(), true, as.secondExport()));
  }

  private static void hashes(LoggedLot lot) {
    long from = moment(lot);
    boolean times = lot.random().nextBoolean();
    UnaryOperator<Row> change = row -> times ? row.at("#####") : row.written("#####");
    change(lot, from, from + minutes(lot, 2, 90), change);
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

  private static void twiceApart(LoggedLot lot) {
    List<Row> rows = new ArrayList<>();
    for (Row row : lot.rows()) {
      rows.add(row);
      if (lot.random().nextInt(50) == 0) {
        rows.add(row.of(row.core() + lot.noise(6)));
      }
    }
    lot.rows(rows);
  }

  private static void overlapping(LoggedLot lot) {
    Form as = lot.form();
    lot.form(new Form(as.two(), as.step(), as.celsius(), as.stated(), as.minutes(), moment(lot)));
  }

  private static void mistyped(LoggedLot lot) {
    lot.mistyped(lot.random().nextInt(5, 30));
  }

  /** Each reading in a time is written so that it is no plain number. */
  private static void cells(LoggedLot lot) {
    List<String> forms =
        List.of(
            "%s F",
            "%s °C", ">%s", "~%s", "%s*", "\"%s,0\"", "%se0", "HI", "OVER", "warm", "#####");
    String form = forms.get(lot.random().nextInt(forms.size()));
    long from = moment(lot);
    change(
        lot,
        from,
        from + minutes(lot, 10, 300),
        row -> row.written(form.replace("%s", lot.written(row.core(), row.second()))));
  }

  private static void codes(LoggedLot lot) {
    List<String> codes =
        List.of(
            "-273.2",
            "-242.02",
            "-200",
            "-99.9",
            "-888.88",
            "-999",
            "-9999",
            "-83.4",
            "2147483647");
    String code = codes.get(lot.random().nextInt(codes.size()));
    long from = moment(lot);
    change(lot, from, from + minutes(lot, 10, 300), row -> row.written(code));
  }

  /** All before some time is passed over, up to a heading that stands there again. */
  private static void skipped(LoggedLot lot) {
    lot.skippedUntil(lot.random().nextLong(1800, lot.seconds() * 8 / 10));
  }

  /** One of those of the cells of a log, or of its lines. */
  static List<Damage> ofCells(int number) {
    return List.of(OF_CELLS.get(number % OF_CELLS.size()));
  }

  /** One or two of the others. */
  static List<Damage> some(SplittableRandom random) {
    Damage first = OTHERS.get(random.nextInt(OTHERS.size()));
    Damage second = OTHERS.get(random.nextInt(OTHERS.size()));
    return random.nextBoolean() || first == second ? List.of(first) : List.of(first, second);
  }
}

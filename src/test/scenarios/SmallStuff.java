import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** The books of what goes wrong now and then: a plug that is loose, a bag that is another, a week written at once. */
final class SmallStuff {

  private static final double ERROR = -127;
  private static final double POWER_ON = 185;

  private SmallStuff() {}

  static Map<String, Consumer<Make.Book>> all() {
    return Map.of(
        "s2b-spoons", SmallStuff::spoons,
        "s2c-strong-cure", SmallStuff::strongCure,
        "s8a-error-values", SmallStuff::errorValues,
        "s8b-harmless", SmallStuff::harmless,
        "s8c-celsius", SmallStuff::celsius,
        "s8d-stuck", SmallStuff::stuck,
        "s8e-pounds", SmallStuff::pounds,
        "s8f-ice-check", SmallStuff::iceCheck,
        "s9-backfill", SmallStuff::backfill,
        "s10-shipped-before-review", SmallStuff::shipped);
  }

  // ------------------------------------------------------------------------------------------------------------ the cure

  private static void spoons(Make.Book book) {
    checks(book, "2026-02-20");
    book.enter("26051-B1", weighedIn("2026-02-20", 2310, "2,tsp"));
  }

  /** 3 % of a cure that is used at 0.25 %: the bag of the ready mix stands on the same shelf. */
  private static void strongCure(Make.Book book) {
    checks(book, "2026-02-20");
    book.enter("26051-B2", weighedIn("2026-02-20", 4812, "144.4,g"));
  }

  private static String weighedIn(String day, int green, String cure) {
    return """
        cure,%1$s 09:05,product,MMB,,,IQ,,
        cure,%1$s 09:10,rind,,off,,IQ,,
        cure,%1$s 09:12,green weight,,%2$d,g,IQ,S-10,
        cure,%1$s 09:14,thickness,,38,mm,IQ,,
        cure,%1$s 09:20,curing salt,C1-7741,%3$s,IQ,S-01,
        cure,%1$s 09:40,into cure,F1,,,IQ,,
        """.formatted(day, green, cure);
  }

  /** 5 lb 8 oz were typed as 5.8 lb, on which the cure was worked out. */
  private static void pounds(Make.Book book) {
    String scale = "{\"id\": \"S-LB\", \"kind\": \"scale\", \"readability\": \"0.1 oz\", \"checkEvery\": \"30 d\","
        + " \"tolerance\": \"0.2 oz\"},\n    ";
    book.put("plan.json", Scenarios.plan().replace("{\"id\": \"S-01\"", scale + "{\"id\": \"S-01\""));
    checks(book, "2026-03-20");
    book.enter("", "instruments,2026-03-20 07:11,check weight,5 lb,5.0,lb,IQ,S-LB,");
    book.enter("26079-B1", weighedIn("2026-03-20", 0, "8.0,g").replace(",0,g,IQ,S-10,", ",5.8,lb,IQ,S-LB,5 lb 8 oz"));
    turns(book, "26079-B1", "2026-03-21", "2026-03-27");
    book.enter("26079-B1", """
        cure,2026-03-28 10:00,out of cure,,,,IQ,,
        cure,2026-03-28 10:02,weight,,84.0,oz,IQ,S-LB,5 lb 4 oz
        soak,2026-03-28 10:10,into soak,SK,,,IQ,,
        soak,2026-03-28 11:10,out of soak,,,,IQ,,
        soak,2026-03-28 11:14,weight,,5 lb 5 oz,lb,IQ,S-LB,
        """);
  }

  // ------------------------------------------------------------------------------------------------------------ the logs

  private static Scenarios.Run belly(String lot, String cured, String load) {
    return new Scenarios.Run(lot, "JTB", cured, load, 186, 590, "F2", Make.Curves.FAN_FRIDGE);
  }

  /** As the fire that went out, with four numbers that are no readings: believed, it was hot and fell at once. */
  private static void errorValues(Make.Book book) {
    Scenarios.Run run = new Scenarios.Run("26058-B1", "JTB", "2026-02-27", "2026-03-07 08:02", 270, 955, "F4",
        Make.Curves.STILL_FRIDGE);
    run.enter(book, Scenarios.Piece.BELLY, 120.0, 38.5);
    Make.Series core = Make.Curves.FIRE_OUT.noisy(0.08, "s8a");
    run.log(book, 0, Make.Curves.DYING_FIRE,
        minute -> minute == 155 ? POWER_ON : minute < 240 || minute > 242 ? core.apply(minute) : ERROR);
  }

  /** Two exports of one run share 91 rows, 41 rows stand twice, and the smoker was opened: a good lot stays a good lot. */
  private static void harmless(Make.Book book) {
    Scenarios.Run run = belly("26082-B1", "2026-03-23", "2026-03-31 08:02");
    run.enter(book, Scenarios.Piece.BELLY, 150.4, 36.8);
    Make.Series air = run.air(Make.Curves.FIRE);
    Make.Curve lid = Make.Curve.through("100:199 105:151 112:195");
    Make.Log log = Make.Log.plain("2026-03-31 08:02", 590)
        .column("P1", Make.Curves.BELLY_FAN_FRIDGE.noisy(0.1, "s8b"))
        .column("Air", minute -> minute < 100 || minute > 112 ? air.apply(minute) : lid.at(minute));
    List<String> rows = new String(log.bytes(), StandardCharsets.UTF_8).lines().toList();
    List<String> first = new ArrayList<>(rows.subList(0, 302));
    for (int row = 0; row < 41; row++) {
      first.add(102 + 2 * row, first.get(101 + 2 * row));
    }
    book.put(run.day() + "/probes-1.csv", String.join("\n", first) + "\n");
    book.put(run.day() + "/probes-2.csv", rows.get(0) + "\n" + String.join("\n", rows.subList(211, 592)) + "\n");
    book.put(run.day() + "/logs.json", run.list(1).replace("probes.csv", "probes-*.csv"));
  }

  private static void celsius(Make.Book book) {
    Scenarios.Run run = belly("26083-B1", "2026-03-24", "2026-04-01 08:02");
    run.enter(book, Scenarios.Piece.BELLY, 150.4, 36.8);
    Make.Series core = Make.Curves.BELLY_FAN_FRIDGE.noisy(0.1, "s8c");
    run.log(book, 0, Make.Curves.FIRE, minute -> (core.apply(minute) - 32) / 1.8);
  }

  private static void stuck(Make.Book book) {
    Scenarios.Run run = belly("26084-B1", "2026-03-25", "2026-04-02 08:02");
    run.enter(book, Scenarios.Piece.BELLY, 150.4, 36.8);
    Make.Series core = Make.Curves.BELLY_FAN_FRIDGE.noisy(0.1, "s8d");
    run.log(book, 0, Make.Curves.FIRE, minute -> minute < 246 || minute > 280 ? core.apply(minute) : 118.4);
  }

  // ------------------------------------------------------------------------------------------------------- the paperwork

  private static void checks(Make.Book book, String day) {
    new Scenarios.Run("", "", day, day + " 12:00", 0, 0, "", Make.Curves.FAN_FRIDGE).enterChecks(book);
  }

  /**
   * Three lots lie in a fridge that is read with a thermometer which fails in the ice five days after its last good check.
   * All readings of the fridge stand under the first of them.
   */
  private static void iceCheck(Make.Book book) {
    checks(book, "2026-04-06");
    for (int lot = 1; lot <= 3; lot++) {
      String code = "26096-B" + lot;
      String day = LocalDate.parse("2026-04-06").plusDays(lot - 1).toString();
      new Make.Lot(book, code).weighIn(day + " 09:05", "JTB", "DE-0401", "off", 4700 + 20 * lot, "38 mm",
          new Make.Mix("S-01", "11.2", "95.0", "47.0", "juniper", "9.6"));
      turns(book, code, LocalDate.parse(day).plusDays(1).toString(), "2026-04-13");
    }
    new Make.Lot(book, "26096-B1").coolerTwiceDaily("cure", "F1", "2026-04-06", "2026-04-13");
    book.enter("", """
        instruments,2026-04-08 06:50,ice point,,32.3,\u00b0F,IQ,HT-3,
        instruments,2026-04-13 06:50,ice point,,35.1,\u00b0F,MA,HT-3,
        """);
  }

  private static void turns(Make.Book book, String lot, String first, String last) {
    new Make.Lot(book, lot).turnDaily(first, last, 40);
  }

  /** Seven days' turns, typed in 50 seconds on the eighth. */
  private static void backfill(Make.Book book) {
    checks(book, "2026-04-01");
    Make.Lot lot = new Make.Lot(book, "26091-B1");
    lot.weighIn("2026-04-01 09:05", "JTB", "DE-0327", "off", 4790, "38 mm",
        new Make.Mix("S-01", "11.4", "96.0", "48.0", "juniper", "9.8"));
    lot.coolerTwiceDaily("cure", "F1", "2026-04-01", "2026-04-09");
    for (int day = 1; day <= 7; day++) {
      String date = LocalDate.parse("2026-04-01").plusDays(day).toString();
      String typed = "2026-04-09 08:10:%02d".formatted(5 + (day - 1) * 50 / 6);
      book.enter("26091-B1", "cure," + date + " 07:00,turned,,,,MA,,", typed);
    }
    book.enter("26091-B1", "cure,2026-04-09 07:05,turned,,,,IQ,,");
  }

  /** Sold at 08:15, reviewed at 10:40. */
  private static void shipped(Make.Book book) {
    Scenarios.Run run = belly("26098-B1", "2026-04-08", "2026-04-16 08:02");
    run.enter(book, Scenarios.Piece.BELLY, 150.4, 36.8);
    run.log(book, 0, Make.Curves.FIRE, Make.Curves.BELLY_FAN_FRIDGE.noisy(0.1, "s10"));
    book.enter("26098-B1", """
        dispatch,2026-04-16 18:40,packed,26 packs,3900,g,IQ,S-10,packs of 150 g
        dispatch,2026-04-16 18:50,ends,,246,g,IQ,S-10,
        dispatch,2026-04-16 18:52,waste,,12,g,IQ,S-10,
        dispatch,2026-04-17 08:15,dispatched,Oast Row Farm Shop,3900,g,IQ,S-10,
        dispatch,2026-04-17 10:40,reviewed,,,,IQ,,
        """);
  }
}

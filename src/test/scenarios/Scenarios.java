import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Consumer;

/**
 * Makes small books for tests, one lot each, with the parts of the demo's program:
 *
 * <pre>
 * javac -d target/scenarios demo-data/Make.java src/test/scenarios/*.java
 * java -cp target/scenarios Scenarios src/test/scenarios
 * </pre>
 *
 * <p>What each book shows stands in {@code src/test/scenarios/README.md}.
 */
public final class Scenarios {

  private static final ZoneId ZONE = ZoneId.of("America/New_York");
  private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      System.err.println("usage: java -cp CLASSES Scenarios FOLDER");
      System.exit(2);
    }
    for (Map.Entry<String, Consumer<Make.Book>> scenario : all().entrySet()) {
      Make.Book book = new Make.Book();
      book.put("plan.json", plan());
      scenario.getValue().accept(book);
      book.writeTo(Path.of(args[0]).resolve(scenario.getKey()));
    }
  }

  static String plan() {
    return Make.Plan.text(Make.Plan.bacon("CSL", "Caraway & stout loin bacon", "loin", "7 d",
        "a week carries the cure through the lean of a loin"));
  }

  private static Map<String, Consumer<Make.Book>> all() {
    Map<String, Consumer<Make.Book>> all = new TreeMap<>();
    all.put("s1b-still-fridge", Scenarios::stillFridge);
    all.put("s3-fire-out", Scenarios::fireOut);
    all.put("s5a-gap-with-hand-reading", book -> gap(book, 244, true));
    all.put("s5b-gap-without", book -> gap(book, 244, false));
    all.put("s5c-long-gap", book -> gap(book, 307, false));
    all.put("s6a-probe-out", book -> probeOut(book, false));
    all.put("s6b-probe-out-by-hand", book -> probeOut(book, true));
    all.put("s7a-autumn", Scenarios::autumn);
    all.put("s7b-spring", Scenarios::spring);
    all.put("s7c-logger-slow", Scenarios::loggerSlow);
    all.putAll(SmallStuff.all());
    return all;
  }

  // ----------------------------------------------------------------------------------------------------- the scenarios

  private static void stillFridge(Make.Book book) {
    Run run = new Run("26047-B1", "JTB", "2026-02-16", "2026-02-24 08:02", 187, 900, "F4", Make.Curves.STILL_FRIDGE);
    run.enter(book, Piece.BELLY, 150.4, 38.6);
    run.log(book, 0, Make.Curves.FIRE, BELLY_STILL_FRIDGE.noisy(0.08, "s1b"));
  }

  private static void fireOut(Make.Book book) {
    Run run = new Run("26058-B1", "JTB", "2026-02-27", "2026-03-07 08:02", 270, 955, "F4", Make.Curves.STILL_FRIDGE);
    run.enter(book, Piece.BELLY, 120.0, 38.5);
    run.log(book, 0, Make.Curves.DYING_FIRE, Make.Curves.FIRE_OUT.noisy(0.08, "s3"));
  }

  /** @param next the minute of the first reading after the gap; the last before it is minute 197, 12:31 */
  private static void gap(Make.Book book, int next, boolean hand) {
    Run run = new Run("26072-J1", "BPJ", "2026-03-13", "2026-03-19 09:14", 135, 411, "F2", Make.Curves.FAN_FRIDGE);
    run.enter(book, Piece.JOWL, 149.6, 36.9);
    if (hand) {
      book.enter("26072-J1", "chill,2026-03-19 12:52,internal temperature,thickest,79.0,\u00b0F,IQ,HT-3,probe silent since 12:31");
    }
    run.log(book, 0, Make.Curves.FIRE, Make.Curves.JOWL_FAN_FRIDGE.noisy(0.1, "s5").silentBetween(197, next));
  }

  /** The probe of the thick end falls out 49 minutes after the smoke; with hand readings it is put back at minute 398. */
  private static void probeOut(Make.Book book, boolean hand) {
    Run run = new Run("26079-L1", "CSL", "2026-03-20", "2026-03-29 08:00", 251, 700, "F2", Make.Curves.FAN_FRIDGE);
    run.enter(book, Piece.LOIN, 153.0, 37.4);
    if (hand) {
      book.enter("26079-L1", """
          chill,2026-03-29 13:09,internal temperature,thickest,132.0,\u00b0F,MA,HT-3,P1 found lying on the shelf
          chill,2026-03-29 14:28,internal temperature,thickest,82.9,\u00b0F,MA,HT-3,
          chill,2026-03-29 14:35,internal temperature,thickest,77.9,\u00b0F,MA,HT-3,P1 put back after this reading
          actions,2026-03-29 14:45,explained,probe moved probes.csv:303:P1,excluded chill.csv:4 chill.csv:5 chill.csv:6,,MA,,P1 fell out at 13:00 and lay on the shelf
          actions,2026-03-29 14:46,explained,probe moved probes.csv:400:P1,confirmed chill.csv:6,,MA,,P1 put back into the thick end at 14:38
          """);
    }
    Make.Curve thick = LOIN_FAN_FRIDGE.slower(251, 0.82);
    Make.Curve thin = LOIN_FAN_FRIDGE.shrunk(39.2, 1.01).slower(251, 0.78);
    run.log(book, 0, Make.Curves.FIRE, fallen(thick, 300, hand ? 398 : 701), thin.noisy(0.1, "s6 P2"));
  }

  /** The curve, but from two minutes after {@code out} until {@code back} the air of the fan fridge. */
  private static Make.Series fallen(Make.Curve curve, int out, int back) {
    Random random = new Random("s6 P1".hashCode());
    Make.Series core = curve.noisy(0.1, "s6 P1 core");
    return minute -> {
      if (minute <= out || minute >= back) {
        return core.apply(minute);
      }
      double air = Make.Curves.FAN_FRIDGE.at(minute - 281.0) + 0.3 * random.nextGaussian();
      return minute == out + 1 ? (curve.at(out) + air) / 2 : air;
    };
  }

  private static void autumn(Make.Book book) {
    Run run = new Run("26296-L1", "CSL", "2026-10-23", "2026-10-31 19:26", 251, 800, "F2", Make.Curves.FAN_FRIDGE);
    run.enter(book, Piece.LOIN, 153.0, 37.2);
    run.log(book, 0, Make.Curves.FIRE, LOIN_FAN_FRIDGE.noisy(0.08, "s7a"));
  }

  private static void spring(Make.Book book) {
    Run run = new Run("26058-B2", "JTB", "2026-02-27", "2026-03-07 21:28", 186, 598, "F2", Make.Curves.FAN_FRIDGE);
    run.enter(book, Piece.BELLY, 150.0, 36.6);
    run.log(book, 0, Make.Curves.FIRE, Make.Curves.BELLY_FAN_FRIDGE.noisy(0.1, "s7b"));
  }

  private static void loggerSlow(Make.Book book) {
    Run run = new Run("26047-B1", "JTB", "2026-02-16", "2026-02-24 09:03", 185, 590, "F2", Make.Curves.FAN_FRIDGE);
    run.enter(book, Piece.BELLY, 150.2, 36.7);
    run.log(book, 37, Make.Curves.FIRE, Make.Curves.BELLY_FAN_FRIDGE.noisy(0.1, "s7c"));
  }

  // ------------------------------------------------------------------------------------------------ one lot and its log

  /** A cut with its weights: green, cured, rinsed, dried, smoked and chilled, in g. */
  record Piece(String thickness, Make.Mix mix, int... weight) {

    static final Piece BELLY = new Piece("38 mm", new Make.Mix("S-01", "11.5", "97.5", "48.0", "juniper", "10.0"),
        4812, 4640, 4686, 4611, 4196, 4158);
    static final Piece JOWL = new Piece("28 mm", new Make.Mix("S-001", "2.98", "24.80", "12.40", "black pepper", "6.00"),
        1240, 1198, 1209, 1191, 1085, 1076);
    static final Piece LOIN = new Piece("84 mm", new Make.Mix("S-001", "6.86", "57.20", "28.60", "caraway", "8.00"),
        2860, 2768, 2790, 2747, 2541, 2514);
  }

  /**
   * One lot from the cure to the end of its chill. Minutes count from the load of the smoker; the meat hangs for half an
   * hour after the smoke.
   */
  record Run(String lot, String product, String cured, String load, int out, int end, String place,
      Make.Fridge fridge) {

    void enter(Make.Book book, Piece piece, double finish, double chilled) {
      enterChecks(book);
      Make.Lot entries = new Make.Lot(book, lot);
      String dayBefore = LocalDate.parse(load.substring(0, 10)).minusDays(1).toString();
      entries.weighIn(cured + " 09:05", product, "DE-0212", "off", piece.weight()[0], piece.thickness(), piece.mix());
      entries.turnDaily(LocalDate.parse(cured).plusDays(1).toString(), dayBefore, 50);
      entries.coolerTwiceDaily("cure", "F1", cured, LocalDate.parse(dayBefore).minusDays(1).toString());
      entries.soak(dayBefore + " 10:00", 60, piece.weight()[1], piece.weight()[2]);
      entries.dry(dayBefore + " 11:20", at(-15), piece.weight()[3]);
      entries.smoke(load, "SM", at(out), finish, piece.weight()[4]);
      entries.chill(at(out + 30), place, place.equals("F2") ? 38.4 : 47.0);
      entries.chilled(at(end), chilled, piece.weight()[5]);
    }

    void enterChecks(Make.Book book) {
      book.enter("", """
          instruments,%1$s 06:50,ice point,,32.0,\u00b0F,@,HT-3,
          instruments,%1$s 06:54,ice point,,32.0,\u00b0F,@,LG-A,
          instruments,%1$s 07:05,check weight,1000 g,1000,g,@,S-10,
          instruments,%1$s 07:07,check weight,100 g,100.0,g,@,S-01,
          instruments,%1$s 07:09,check weight,10 g,10.00,g,@,S-001,
          """.formatted(cured).replace("@", Make.worker(LocalDate.parse(cured))));
    }

    /** The clock on the wall, which a change of the clock in the night has moved. */
    private String at(int minute) {
      return Make.time(load).atZone(ZONE).plusMinutes(minute).format(MINUTE);
    }

    /** @param slow how far the logger's own clock is behind, in minutes */
    void log(Make.Book book, int slow, Make.Curve fire, Make.Series... probes) {
      Make.Log log = Make.Log.plain(Make.minutes(load, -slow), end);
      for (int i = 0; i < probes.length; i++) {
        log.column("P" + (i + 1), probes[i]);
      }
      book.put(day() + "/probes.csv", log.column("Air", air(fire)));
      book.put(day() + "/logs.json", list(probes.length));
    }

    Make.Series air(Make.Curve fire) {
      return new Make.Air(out, out + 30, fire, fridge).noisy(lot + " air");
    }

    String day() {
      return at(end).substring(0, 10);
    }

    String list(int probes) {
      List<String> columns = new ArrayList<>();
      for (int i = 1; i <= probes; i++) {
        columns.add(column("P" + i, "internal temperature", "\"lot\": \"" + lot + "\", \"item\": \"P" + i + "\""));
      }
      columns.add(column("Air", "chamber temperature", "\"place\": \"SM\", \"until\": \"" + at(out) + ":00\""));
      columns.add(column("Air", "cooler temperature",
          "\"place\": \"" + place + "\", \"from\": \"" + at(out + 31) + ":00\""));
      return """
          {
            "logs": [
              {
                "files": "probes.csv",
                "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
                "instrument": "LG-A",
                "columns": [
          %s
                ]
              }
            ]
          }
          """.formatted(String.join(",\n", columns));
    }

    private static String column(String heading, String what, String rest) {
      return "        {\"column\": \"" + heading + "\", \"what\": \"" + what + "\", \"unit\": \"\u00b0F\", " + rest + "}";
    }
  }

  private static final Make.Curve BELLY_STILL_FRIDGE = Make.Curve.through("0:39.2 30:55.9 60:81.8 90:104.5 120:122.8"
      + " 150:137.3 180:148.5 187:150.3 192:149.6 210:142.3 240:125.5 270:110.3 300:97.6 360:78.3 420:65.1 480:56.1"
      + " 540:50.0 600:45.8 660:43.1 720:41.2 780:39.9 840:39.1 900:38.5");
  private static final Make.Curve LOIN_FAN_FRIDGE = Make.Curve.through("0:39.2 30:43.4 60:60.3 90:80.1 120:98.3 150:113.9"
      + " 180:127.1 210:138.1 240:147.1 255:151.0 270:153.3 280:152.6 300:145.2 330:126.4 360:107.9 390:92.8 420:80.6"
      + " 450:70.9 480:63.2 510:57.1 540:52.3 600:45.5 660:41.3 688:40.0 720:38.8 760:37.7 800:37.0 860:36.4");
}

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.Collectors;

/**
 * Makes the demo book of the invented Wrenfold Smokeyard: the plan, the sheets of each day and the probe logs.
 *
 * <p>Run with {@code java demo-data/Make.java demo-data/wrenfold}. It needs a JDK 17 and nothing else. The noise is seeded
 * by the name of the log's column and only strictly defined arithmetic is used, so each run writes the same bytes. Files
 * that are already there are overwritten; no other file is touched. This source keeps to ASCII, so that it reads the same
 * under any locale: the degree sign is {@code \\u00b0}.
 *
 * <p>Temperatures are in degrees Fahrenheit, masses in g, and a curve's time is in minutes from the loading of the smoker,
 * unless a name says otherwise. The curves follow a simple conduction model: good for a demo, never for a decision about
 * food.
 */
public final class Make {

  private static final String DAY = "2026-02-24";

  public static void main(String[] args) throws IOException {
    if (args.length != 1) {
      System.err.println("usage: java demo-data/Make.java FOLDER");
      System.exit(2);
    }
    Book book = new Book();
    book.put("plan.json", Plan.text());
    enterInstrumentChecks(book);
    enterJuniperBelly(book);
    enterMustardBelly(book);
    enterLoin(book);
    enterStackedBellies(book);
    enterJowl(book);
    enterNewBelly(book);
    book.put(DAY + "/logs.json", LogList.TEXT);
    book.writeTo(Path.of(args[0]));
  }

  // ---------------------------------------------------------------------------------------------------------- the lots

  /** Every instrument that a later reading rests on was checked before it. */
  private static void enterInstrumentChecks(Book book) {
    book.enter("", """
        instruments,2026-02-12 06:50,ice point,,32.4,\u00b0F,IQ,HT-3,
        instruments,2026-02-12 06:54,ice point,,32.0,\u00b0F,IQ,LG-A,
        instruments,2026-02-12 06:56,ice point,,32.0,\u00b0F,IQ,LG-B,
        instruments,2026-02-12 06:58,ice point,,0.0,\u00b0C,IQ,LG-C,
        instruments,2026-02-12 07:05,check weight,1000 g,1000,g,IQ,S-10,
        instruments,2026-02-12 07:07,check weight,100 g,100.0,g,IQ,S-01,
        instruments,2026-02-12 07:09,check weight,10 g,10.00,g,IQ,S-001,
        instruments,2026-02-16 06:50,ice point,,32.4,\u00b0F,MA,HT-3,
        instruments,2026-02-16 06:58,ice point,,32.1,\u00b0F,MA,LG-A,
        instruments,2026-02-16 07:05,check weight,1000 g,1000,g,MA,S-10,
        instruments,2026-02-16 07:07,check weight,100 g,100.0,g,MA,S-01,
        instruments,2026-02-23 06:30,ice point,,32.4,\u00b0F,MA,HT-3,
        instruments,2026-02-24 06:20,check weight,1000 g,1000,g,MA,S-10,
        instruments,2026-02-24 06:22,check weight,100 g,100.0,g,MA,S-01,
        """);
  }

  /** 26047-B1 meets every limit. Its fridge readings serve every lot that is in the same place. */
  private static void enterJuniperBelly(Book book) {
    book.enter("26047-B1", Juniper.SHEETS);
    Air air = new Air(186, 216, Curves.FIRE, Curves.FAN_FRIDGE);
    book.put(DAY + "/probes-a.csv", Log.plain("2026-02-24 08:02", 598)
        .column("P1", Curves.BELLY_FAN_FRIDGE.noisy(0.1, "probes-a P1"))
        .column("Air", air.noisy("probes-a Air")));
  }

  /** 26044-B1 has too much nitrite: the cure was worked out on the weight with the rind still on. */
  private static void enterMustardBelly(Book book) {
    Lot lot = new Lot(book, "26044-B1");
    lot.weighIn("2026-02-13 09:05", "MMB", "DE-0209", "on", 5400, "40 mm",
        new Mix("S-01", "17.2", "108.0", "54.0", "mustard seed", "14.0"));
    lot.enter("cure,2026-02-13 09:31,rind weight,,540,g,IQ,S-10,skinned before the rub");
    lot.turnDaily("2026-02-14", "2026-02-23", 52);
    lot.soak("2026-02-23 10:00", 60, 4691, 4738);
    lot.dry("2026-02-23 11:20", "2026-02-24 11:30", 4664);
    lot.smoke("2026-02-24 11:45", "SM", "2026-02-24 14:50", 149.8, 4246);
    lot.glaze("2026-02-24 15:04", "molasses glaze MG-04", 4301);
    lot.chill("2026-02-24 15:20", "F2", 38.2);
    lot.chilled("2026-02-24 21:15", 37.4, 4266);
    lot.enter("""
        actions,2026-02-24 21:25,held,tag T-031,4266,g,MA,,"whole lot, fan fridge, top shelf"
        actions,2026-02-24 21:30,cause,,,,MA,,"the piece was weighed with its rind on, and the cure was worked out on that weight"
        actions,2026-02-24 21:34,control regained,26055-B1,,,MA,,"next piece skinned before it was weighed at 16:07, and its sum read back"
        """);
    Air air = new Air(185, 215, Curves.FIRE, Curves.FAN_FRIDGE);
    book.put(DAY + "/run-2.csv", Log.plain("2026-02-24 11:45", 570)
        .column("P2", Curves.BELLY_FAN_FRIDGE.noisy(0.1, "run-2 P2"))
        .column("Air", air.noisy("run-2 Air")));
  }

  /** 26043-L1 is sold as fully cooked, but the fire went out: short on every row of lethality, and cooling is broken. */
  private static void enterLoin(Book book) {
    Lot lot = new Lot(book, "26043-L1");
    lot.weighIn("2026-02-12 13:05", "CPL", "DE-0209", "off", 2860, "60 mm",
        new Mix("S-001", "6.86", "57.20", "28.60", "caraway", "8.00"));
    lot.turnDaily("2026-02-13", "2026-02-22", 44);
    lot.coolerTwiceDaily("cure", "F1", "2026-02-12", "2026-02-15");
    lot.enter("cure,2026-02-16 06:47,cooler temperature,F1,37.7,\u00b0F,MA,HT-3,");
    lot.soak("2026-02-22 13:30", 60, 2768, 2790);
    lot.dry("2026-02-22 14:50", "2026-02-23 12:45", 2747);
    lot.smoke("2026-02-23 13:00", "SM", "2026-02-23 17:30", 114.3, 2541);
    lot.enter("""
        smoke,2026-02-23 17:20,chamber temperature,SM,103,\u00b0F,MA,HT-3,found the fire out
        actions,2026-02-23 17:40,held,tag T-030,2541,g,MA,,"whole lot, still fridge, bottom shelf"
        """);
    lot.chill("2026-02-23 18:00", "F4", 46.9);
    lot.chilled("2026-02-24 06:30", 38.2, 2514);
    Air air = new Air(270, 300, Curves.DYING_FIRE, Curves.STILL_FRIDGE);
    book.put(DAY + "/loin.csv", Log.twoColumns("2026-02-23 13:00", 1050)
        .column("P1", Curves.LOIN_FIRE_OUT.noisy(0.08, "loin P1"))
        .column("Chamber", air.noisy("loin Chamber"))
        .column("Humid", Curves.HUMIDITY.noisy(0.5, "loin Humid")));
  }

  /** 26045-B1 and 26045-B2 lie on each other in a crowded fridge, and are still chilling when the day ends. */
  private static void enterStackedBellies(Book book) {
    enterStacked(new Lot(book, "26045-B1"), 0, 4655, "11.2", new int[] {4487, 4530, 4462, 4052, 4110}, 151.4);
    enterStacked(new Lot(book, "26045-B2"), 6, 4720, "11.3", new int[] {4556, 4601, 4529, 4117, 4175}, 151.0);
    book.enter("26045-B1", "chill,2026-02-24 21:00,internal temperature,thickest,73.9,\u00b0F,MA,HT-3,");
    book.enter("26045-B2", "chill,2026-02-24 21:02,internal temperature,thickest,74.6,\u00b0F,MA,HT-3,");
    Air air = new Air(190, 280, Curves.FIRE, Curves.CROWDED_FRIDGE);
    book.put(DAY + "/stack.csv", Log.twoColumns("2026-02-24 07:30", 989)
        .column("P1", Curves.BELLY_STACKED.noisy(0.1, "stack P1"))
        .column("P2", Curves.BELLY_STACKED_LOWER.noisy(0.1, "stack P2"))
        .column("Air", air.noisy("stack Air")));
  }

  /** @param weights after cure, soak, drying, smoke and glaze, in g */
  private static void enterStacked(Lot lot, int later, int green, String cure, int[] weights, double finish) {
    lot.weighIn(minutes("2026-02-14 09:05", later), "JTB", "DE-0212", "off", green, "38 mm",
        new Mix("S-01", cure, "94.0", "47.0", "juniper", "9.5"));
    lot.turnDaily("2026-02-15", "2026-02-23", 54 + later / 3);
    lot.soak(minutes("2026-02-23 11:30", later), 60, weights[0], weights[1]);
    lot.dry(minutes("2026-02-23 12:50", later), minutes("2026-02-24 07:15", later), weights[2]);
    lot.smoke("2026-02-24 07:30", "SM2", "2026-02-24 10:40", finish, weights[3]);
    lot.glaze(minutes("2026-02-24 10:50", later), "treacle glaze TG-09", weights[4]);
    lot.chill("2026-02-24 12:10", "F3", 56.2);
  }

  /** 26048-J1 meets its limits although its probe fell silent over the crossing of 80 degrees: a hand reading closes the gap. */
  private static void enterJowl(Book book) {
    Lot lot = new Lot(book, "26048-J1");
    lot.weighIn("2026-02-17 10:05", "BPJ", "DE-0212", "off", 1240, "28 mm",
        new Mix("S-001", "2.98", "24.80", "12.40", "black pepper", "6.00"));
    lot.turnDaily("2026-02-18", "2026-02-23", 58);
    lot.soak("2026-02-23 13:20", 45, 1198, 1209);
    lot.dry("2026-02-23 14:30", "2026-02-24 10:42", 1191);
    lot.smoke("2026-02-24 10:54", "SM2", "2026-02-24 13:09", 149.6, 1085);
    lot.glaze("2026-02-24 13:18", "birch-syrup glaze BG-02", 1102);
    lot.chill("2026-02-24 13:39", "F2", 37.9);
    lot.enter("chill,2026-02-24 14:35,internal temperature,thickest,76.8,\u00b0F,MA,HT-3,"
        + "probe silent since 14:11; its battery changed 14:57");
    lot.chilled("2026-02-24 17:45", 37.0, 1093);
    Air air = new Air(135, 165, Curves.FIRE, Curves.FAN_FRIDGE);
    book.put(DAY + "/jowl.csv", Log.celsius("2026-02-24 10:54", 411)
        .column("F\u00fchler 1", Curves.JOWL_FAN_FRIDGE.noisy(0.1, "jowl P1").silentBetween(197, 244))
        .column("Luft", air.noisy("jowl Air")));
  }

  /** 26055-B1 goes into cure on the day judged: its nitrite can be judged, all else is pending. */
  private static void enterNewBelly(Book book) {
    Lot lot = new Lot(book, "26055-B1");
    lot.weighIn("2026-02-24 16:00", "JTB", "DE-0223", "off", 4780, "38 mm",
        new Mix("S-01", "11.5", "96.5", "48.0", "juniper", "9.8"));
    lot.enter("""
        cure,2026-02-24 16:40,cooler temperature,F1,37.6,\u00b0F,MA,HT-3,
        cure,2026-02-24 21:05,cooler temperature,F1,37.9,\u00b0F,MA,HT-3,
        """);
  }

  // ---------------------------------------------------------------------------------------------------- time and number

  private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  static LocalDateTime time(String text) {
    return LocalDateTime.parse(text, MINUTE);
  }

  static String minutes(String text, long later) {
    return time(text).plusMinutes(later).format(MINUTE);
  }

  private static String tenth(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** The helper works Wednesdays to Saturdays, the maker on the other days. */
  static String worker(LocalDate day) {
    return day.getDayOfWeek().compareTo(DayOfWeek.WEDNESDAY) >= 0 && day.getDayOfWeek() != DayOfWeek.SUNDAY ? "IQ" : "MA";
  }

  // ----------------------------------------------------------------------------------------------------------- the book

  /** The files of a book: the rows of its sheets, sorted by time, and whole files. */
  static final class Book {

    private static final String HEADING = "lot,time,what,item,value,unit,by,instrument,note";

    /** @param typed when it was typed; empty where that is not on the sheet */
    private record Row(String time, String text, String typed) {}

    private final Map<String, List<Row>> sheets = new TreeMap<>();
    private final Map<String, byte[]> files = new TreeMap<>();

    /** Enters rows of one lot: each line is the sheet's name, a comma, and the row without its lot. */
    void enter(String lot, String lines) {
      for (String line : lines.strip().split("\n")) {
        String[] part = line.split(",", 3);
        String file = part[1].substring(0, 10) + "/" + part[0] + ".csv";
        add(file, new Row(part[1], lot + "," + part[1] + "," + part[2], ""));
      }
    }

    /** A row that was typed at another time, and is filed on the day when it was. */
    void enter(String lot, String line, String typed) {
      String[] part = line.split(",", 3);
      add(typed.substring(0, 10) + "/" + part[0] + ".csv", new Row(part[1], lot + "," + part[1] + "," + part[2], typed));
    }

    private void add(String file, Row row) {
      sheets.computeIfAbsent(file, f -> new ArrayList<>()).add(row);
    }

    void put(String file, String text) {
      files.put(file, text.getBytes(StandardCharsets.UTF_8));
    }

    void put(String file, Log log) {
      files.put(file, log.bytes());
    }

    void writeTo(Path folder) throws IOException {
      sheets.forEach((file, rows) -> put(file, sheet(rows)));
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path path = folder.resolve(file.getKey());
        Files.createDirectories(path.getParent());
        Files.write(path, file.getValue());
      }
    }

    /** The sort keeps the order of rows of the same minute. */
    private static String sheet(List<Row> rows) {
      boolean typed = rows.stream().anyMatch(row -> !row.typed().isEmpty());
      return HEADING + (typed ? ",entered" : "") + "\n" + rows.stream().sorted(Comparator.comparing(Row::time))
          .map(row -> row.text() + (typed ? "," + row.typed() : "") + "\n").collect(Collectors.joining());
    }
  }

  /** The dry mix of one piece, in g as the scale shows it. */
  record Mix(String scale, String cure, String salt, String sugar, String spice, String spiceMass) {}

  /** Enters what is written down for one lot, step by step, at the pace of a usual day. */
  static final class Lot {

    private final Book book;
    private final String code;
    private final Random random;

    Lot(Book book, String code) {
      this.book = book;
      this.code = code;
      this.random = new Random(code.hashCode());
    }

    void enter(String lines) {
      book.enter(code, lines);
    }

    /** @param entry the row from {@code what} on, with @ in the place of the worker's initials */
    private void row(String sheet, String at, String entry) {
      enter(sheet + "," + at + "," + entry.replace("@", worker(time(at).toLocalDate())));
    }

    void weighIn(String at, String product, String supplierLot, String rind, int green, String thickness, Mix mix) {
      row("cure", at, "product," + product + ",,,@,,");
      row("cure", at, "supplier lot," + supplierLot + ",,,@,,Drovers End Abattoir");
      row("cure", minutes(at, 1), "received temperature,," + near(38.3) + ",\u00b0F,@,HT-3,");
      row("cure", minutes(at, 5), "rind,," + rind + ",,@,,");
      row("cure", minutes(at, 7), "green weight,," + green + ",g,@,S-10,");
      row("cure", minutes(at, 9), "thickness,," + thickness.replace(" ", ",") + ",@,,");
      weighMix(minutes(at, 15), mix);
      row("cure", minutes(at, 30), "surfaces covered,,all,,@,,");
      row("cure", minutes(at, 35), "into cure,F1,,,@,,");
    }

    private void weighMix(String at, Mix mix) {
      row("cure", at, "curing salt,C1-7741," + mix.cure() + ",g,@," + mix.scale() + ",");
      row("cure", minutes(at, 1), "salt,," + mix.salt() + ",g,@," + mix.scale() + ",");
      row("cure", minutes(at, 2), "sugar,," + mix.sugar() + ",g,@," + mix.scale() + ",");
      row("cure", minutes(at, 3), "other," + mix.spice() + "," + mix.spiceMass() + ",g,@," + mix.scale() + ",");
    }

    /** One turn each morning, a little after 06:00 plus the given minutes. */
    void turnDaily(String first, String last, int minute) {
      for (LocalDate day = LocalDate.parse(first); !day.isAfter(LocalDate.parse(last)); day = day.plusDays(1)) {
        LocalTime at = LocalTime.of(6, 0).plusMinutes(minute + random.nextInt(3));
        row("cure", day.atTime(at).format(MINUTE), "turned,,,,@,,");
      }
    }

    /** A reading of the fridge each evening, and each morning but the first. */
    void coolerTwiceDaily(String sheet, String place, String first, String last) {
      for (LocalDate day = LocalDate.parse(first); !day.isAfter(LocalDate.parse(last)); day = day.plusDays(1)) {
        if (!day.toString().equals(first)) {
          cooler(sheet, day + " 06:4" + random.nextInt(10), place, near(37.6));
        }
        cooler(sheet, day + " 18:0" + random.nextInt(10), place, near(37.9));
      }
    }

    private void cooler(String sheet, String at, String place, String value) {
      row(sheet, at, "cooler temperature," + place + "," + value + ",\u00b0F,@,HT-3,");
    }

    void soak(String outOfCure, int length, int cured, int rinsed) {
      row("cure", outOfCure, "out of cure,,,,@,,");
      row("cure", minutes(outOfCure, 2), "weight,," + cured + ",g,@,S-10,");
      String into = minutes(outOfCure, 10);
      row("soak", into, "into soak,SK,,,@,,");
      row("soak", minutes(into, 1), "water temperature,," + near(39.3) + ",\u00b0F,@,HT-3,");
      row("soak", minutes(into, length - 2), "water temperature,," + near(40.1) + ",\u00b0F,@,HT-3,");
      row("soak", minutes(into, length), "out of soak,,,,@,,");
      row("soak", minutes(into, length + 4), "weight,," + rinsed + ",g,@,S-10,");
    }

    void dry(String into, String out, int dried) {
      row("dry", into, "into drying,F2,,,@,,");
      cooler("dry", minutes(into, 3), "F2", near(36.6));
      cooler("dry", into.substring(0, 10) + " 18:2" + random.nextInt(10), "F2", near(36.1));
      cooler("dry", out.substring(0, 10) + " 06:5" + random.nextInt(10), "F2", near(36.0));
      cooler("dry", minutes(out, -8), "F2", near(36.0));
      row("dry", minutes(out, -4), "surface,,tacky,,@,,");
      row("dry", out, "out of drying,,,,@,,");
      row("dry", minutes(out, 2), "weight,," + dried + ",g,@,S-10,");
    }

    void smoke(String into, String place, String out, double finish, int smoked) {
      row("smoke", into, "into smoke," + place + ",,,@,,");
      row("smoke", into, "wood,beech,,,@,,");
      row("smoke", minutes(out, -1), "internal temperature,thickest," + tenth(finish) + ",\u00b0F,@,HT-3,hand check");
      row("smoke", out, "out of smoke,,,,@,,");
      row("smoke", minutes(out, 2), "weight,," + smoked + ",g,@,S-10,");
    }

    void glaze(String at, String glaze, int glazed) {
      row("smoke", at, "glazed," + glaze + "," + glazed + ",g,@,S-10,");
    }

    void chill(String into, String place, double air) {
      row("chill", into, "into chill," + place + ",,,@,,");
      cooler("chill", minutes(into, 2), place, tenth(air));
    }

    void chilled(String out, double core, int weight) {
      row("chill", minutes(out, -5), "internal temperature,thickest," + tenth(core) + ",\u00b0F,@,HT-3,hand check");
      row("chill", out, "out of chill,,,,@,,");
      row("chill", minutes(out, 2), "weight,," + weight + ",g,@,S-10,");
    }

    private String near(double value) {
      return tenth(value + (random.nextInt(15) - 7) / 10.0);
    }
  }

  // ----------------------------------------------------------------------------------------------------------- the logs

  /** Readings minute by minute, in degrees Fahrenheit or %; null where there is none. */
  interface Series extends IntFunction<Double> {

    /** Without its readings after the minute {@code last} and before the minute {@code next}. */
    default Series silentBetween(int last, int next) {
      return minute -> {
        Double value = apply(minute);
        return minute > last && minute < next ? null : value;
      };
    }
  }

  /** A smooth curve through points: piecewise cubic, without a bump that the points do not have (Fritsch and Butland). */
  record Curve(double[] minute, double[] value) {

    /** @param points pairs {@code minute:value}, by rising minute */
    static Curve through(String points) {
      String[] pair = points.strip().split("\\s+");
      double[] minute = new double[pair.length];
      double[] value = new double[pair.length];
      for (int i = 0; i < pair.length; i++) {
        minute[i] = Double.parseDouble(pair[i].split(":")[0]);
        value[i] = Double.parseDouble(pair[i].split(":")[1]);
      }
      return new Curve(minute, value);
    }

    double at(double when) {
      int i = 0;
      while (i < minute.length - 2 && when > minute[i + 1]) {
        i++;
      }
      double width = minute[i + 1] - minute[i];
      double s = Math.min(1, Math.max(0, (when - minute[i]) / width));
      double leaving = value[i] + s * s * (3 - 2 * s) * (value[i + 1] - value[i]);
      return leaving + width * s * (1 - s) * ((1 - s) * tangent(i) - s * tangent(i + 1));
    }

    /** The harmonic mean of the slopes on both sides, level at a turning point; at an end the only slope there is. */
    private double tangent(int i) {
      if (i == 0 || i == minute.length - 1) {
        return i == 0 ? slope(0) : slope(i - 1);
      }
      double product = slope(i - 1) * slope(i);
      return product <= 0 ? 0 : 2 * product / (slope(i - 1) + slope(i));
    }

    private double slope(int i) {
      return (value[i + 1] - value[i]) / (minute[i + 1] - minute[i]);
    }

    Series noisy(double sigma, String seed) {
      Random random = new Random(seed.hashCode());
      return minute -> at(minute) + sigma * random.nextGaussian();
    }

    /** The same curve with its values drawn towards {@code fixed}. */
    Curve shrunk(double fixed, double factor) {
      double[] drawn = value.clone();
      for (int i = 0; i < drawn.length; i++) {
        drawn[i] = fixed + (drawn[i] - fixed) * factor;
      }
      return new Curve(minute, drawn);
    }

    /** The same curve, slower by {@code factor} from minute {@code from} on. */
    Curve slower(double from, double factor) {
      double[] later = minute.clone();
      for (int i = 0; i < later.length; i++) {
        later[i] = later[i] <= from ? later[i] : from + (later[i] - from) * factor;
      }
      return new Curve(later, value);
    }
  }

  /** A fridge's air after warm meat came in: {@code base + bump * exp(-t / fall)}, its compressor's sawtooth on top. */
  record Fridge(double room, double base, double bump, double fall) {

    double at(double minutes) {
      return base + bump * StrictMath.exp(-minutes / fall) + sawtooth(minutes, 18, 0.6);
    }
  }

  private static double sawtooth(double minutes, int period, double height) {
    return height * (2 * (minutes % period) / period - 1);
  }

  /** The air round the probe: the smoker until {@code out}, the room where the meat hangs, then the fridge. */
  record Air(int out, int chill, Curve fire, Fridge fridge) {

    Series noisy(String seed) {
      Random random = new Random(seed.hashCode());
      return minute -> at(minute) + (minute <= out ? 2 : 0.4) * random.nextGaussian();
    }

    private double at(int minute) {
      if (minute <= out) {
        return fire.at(minute) + (minute < 40 ? 0 : sawtooth(minute, 25, 5));
      }
      return minute <= chill ? fridge.room() : fridge.at(minute - chill);
    }
  }

  /** A log as its logger exports it: a reading each minute. */
  static final class Log {

    private final ZonedDateTime start;
    private final int last;
    private final String preamble;
    private final DateTimeFormatter time;
    private final boolean celsius;
    private final List<String> headings = new ArrayList<>();
    private final List<Series> columns = new ArrayList<>();

    private Log(String start, int last, String preamble, String heading, String pattern, boolean celsius) {
      this.start = Make.time(start).atZone(ZoneId.of("America/New_York"));
      this.last = last;
      this.preamble = preamble;
      this.time = DateTimeFormatter.ofPattern(pattern, Locale.ROOT);
      this.celsius = celsius;
      headings.add(heading);
    }

    static Log plain(String start, int last) {
      return new Log(start, last, "", "Time", "uuuu-MM-dd HH:mm:ss", false);
    }

    /** The date and the time in columns of their own, the month first. */
    static Log twoColumns(String start, int last) {
      return new Log(start, last, "", "Date,Time", "MM/dd/uuuu,HH:mm:ss", false);
    }

    /** Degrees Celsius, semicolons, decimal commas, the day first, two lines before the heading, windows-1252. */
    static Log celsius(String start, int last) {
      return new Log(start, last, "Logger LG-C\nIntervall 60 s, Werte in \u00b0C\n", "Zeit", "dd.MM.uuuu HH:mm:ss", true);
    }

    Log column(String heading, Series series) {
      headings.add(heading);
      columns.add(series);
      return this;
    }

    byte[] bytes() {
      StringBuilder text = new StringBuilder(preamble).append(String.join(celsius ? ";" : ",", headings)).append('\n');
      for (int minute = 0; minute <= last; minute++) {
        text.append(start.plusMinutes(minute).format(time));
        for (Series column : columns) {
          text.append(celsius ? ';' : ',').append(cell(column.apply(minute)));
        }
        text.append('\n');
      }
      return text.toString().getBytes(celsius ? Charset.forName("windows-1252") : StandardCharsets.UTF_8);
    }

    private String cell(Double value) {
      if (value == null) {
        return "";
      }
      return celsius ? tenth((value - 32) / 1.8).replace('.', ',') : tenth(value);
    }
  }

  static final class Curves {

    static final Curve FIRE = Curve.through("0:76 4:105 8:125 14:145 20:158 30:181 45:192 60:197 90:199 300:199");
    static final Curve DYING_FIRE = Curve.through("0:76 4:105 8:125 14:145 20:158 30:181 45:192 60:197 90:199 130:199"
        + " 135:188 150:160 165:142 180:129 195:120 210:114 225:110 240:107 255:105 270:103");
    static final Curve HUMIDITY = Curve.through("0:95 20:96 60:95.5 100:95 130:93 150:86 180:74 210:66 270:58 300:52"
        + " 330:71 500:78 1200:80");

    static final Fridge FAN_FRIDGE = new Fridge(64, 34.7, 9, 60);
    static final Fridge STILL_FRIDGE = new Fridge(64, 37.4, 11, 120);
    static final Fridge CROWDED_FRIDGE = new Fridge(70, 42.8, 14, 240);

    static final Curve BELLY_FAN_FRIDGE = Curve.through("0:39.2 30:55.9 60:81.8 90:104.5 120:122.8 150:137.3 180:148.5"
        + " 186:150.2 191:150.0 198:148.7 216:143.1 225:136.5 240:122.9 255:110.3 270:98.9 285:89.4 300:81.2 330:68.4"
        + " 360:59.1 390:52.3 420:47.4 450:43.9 480:41.3 510:39.5 540:38.1 570:37.1 600:36.5");
    static final Curve JOWL_FAN_FRIDGE = Curve.through("0:39.2 30:67.6 60:100.5 90:125.3 120:143.0 135:149.8 138:149.9"
        + " 150:142.7 165:131.2 180:114.3 195:98.7 210:84.8 225:74.6 240:66.2 270:54.5 300:47.1 330:42.4 360:39.5 390:37.7"
        + " 420:36.6");
    static final Curve BELLY_STACKED = Curve.through("0:39.2 30:55.9 60:81.8 90:104.5 120:122.8 150:137.3 180:148.5"
        + " 190:152.0 196:152.7 250:147.1 310:136.6 370:125.7 430:115.6 490:106.7 550:98.7 610:91.6 670:85.4 730:79.9"
        + " 790:75.1 850:70.9 910:67.2 970:64.0 1030:61.2");
    static final Curve BELLY_STACKED_LOWER = BELLY_STACKED.shrunk(39.2, 0.996).slower(196, 1.02);
    static final Curve FIRE_OUT = Curve.through("0:39.2 30:55.9 60:81.8 90:104.5 105:114.2 120:122.8 135:130.5"
        + " 150:135.9 160:137.5 168:137.8 180:137.1 195:135.1 210:132.3 225:129.2 240:126.0 255:123.0 270:120.2 300:111.1"
        + " 360:89.4 420:73.3 480:62.1 540:54.2 600:48.8 660:45.1 720:42.6 780:40.9 840:39.8 900:39.0 960:38.6 1050:38.2");
    static final Curve LOIN_FIRE_OUT = FIRE_OUT.shrunk(39.2, 0.9232);
  }

  /** How each log is to be read. */
  static final class LogList {

    static final String TEXT = """
        {
          "logs": [
            {
              "files": "probes-a.csv",
              "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
              "instrument": "LG-A",
              "columns": [
                {"column": "P1", "what": "internal temperature", "unit": "\u00b0F", "lot": "26047-B1", "item": "P1"},
                {"column": "Air", "what": "chamber temperature", "unit": "\u00b0F", "place": "SM", "until": "2026-02-24 11:08:00"}
              ]
            },
            {
              "files": "run-2.csv",
              "time": {"column": "Time", "pattern": "yyyy-MM-dd HH:mm:ss", "zone": "America/New_York"},
              "instrument": "LG-A",
              "columns": [
                {"column": "P2", "what": "internal temperature", "unit": "\u00b0F", "lot": "26044-B1", "item": "P2"},
                {"column": "Air", "what": "chamber temperature", "unit": "\u00b0F", "place": "SM", "until": "2026-02-24 14:50:00"}
              ]
            },
            {
              "files": "loin.csv",
              "time": {"columns": ["Date", "Time"], "pattern": "MM/dd/yyyy HH:mm:ss", "zone": "America/New_York"},
              "instrument": "LG-B",
              "columns": [
                {"column": "P1", "what": "internal temperature", "unit": "\u00b0F", "lot": "26043-L1", "item": "P1"},
                {"column": "Chamber", "what": "chamber temperature", "unit": "\u00b0F", "place": "SM", "until": "2026-02-23 17:30:00"},
                {"column": "Humid", "what": "humidity", "unit": "%", "place": "SM", "until": "2026-02-23 17:30:00"}
              ]
            },
            {
              "files": "stack.csv",
              "time": {"columns": ["Date", "Time"], "pattern": "MM/dd/yyyy HH:mm:ss", "zone": "America/New_York"},
              "instrument": "LG-B",
              "columns": [
                {"column": "P1", "what": "internal temperature", "unit": "\u00b0F", "lot": "26045-B1", "item": "P1"},
                {"column": "P2", "what": "internal temperature", "unit": "\u00b0F", "lot": "26045-B2", "item": "P2"},
                {"column": "Air", "what": "chamber temperature", "unit": "\u00b0F", "place": "SM2", "until": "2026-02-24 10:40:00"},
                {"column": "Air", "what": "cooler temperature", "unit": "\u00b0F", "place": "F3", "from": "2026-02-24 12:11:00"}
              ]
            },
            {
              "files": "jowl.csv",
              "encoding": "windows-1252", "delimiter": ";", "decimal": ",", "skip": 2,
              "time": {"column": "Zeit", "pattern": "dd.MM.yyyy HH:mm:ss", "zone": "America/New_York"},
              "instrument": "LG-C",
              "columns": [
                {"column": "F\u00fchler 1", "what": "internal temperature", "unit": "\u00b0C", "lot": "26048-J1", "item": "P1"},
                {"column": "Luft", "what": "chamber temperature", "unit": "\u00b0C", "place": "SM2", "until": "2026-02-24 13:09:00"}
              ]
            }
          ]
        }
        """;
  }

  /** What was written down for 26047-B1, from the weighing in to the packing. */
  static final class Juniper {

    static final String SHEETS = """
        cure,2026-02-16 09:05,product,JTB,,,MA,,
        cure,2026-02-16 09:05,supplier lot,DE-0212,,,MA,,Drovers End Abattoir
        cure,2026-02-16 09:06,received temperature,,38.5,\u00b0F,MA,HT-3,
        cure,2026-02-16 09:10,rind,,off,,MA,,
        cure,2026-02-16 09:12,green weight,,4812,g,MA,S-10,
        cure,2026-02-16 09:14,thickness,,38,mm,MA,,
        cure,2026-02-16 09:20,curing salt,C1-7741,11.5,g,MA,S-01,
        cure,2026-02-16 09:21,salt,,97.5,g,MA,S-01,
        cure,2026-02-16 09:22,sugar,,48.0,g,MA,S-01,
        cure,2026-02-16 09:23,other,juniper,10.0,g,MA,S-01,
        cure,2026-02-16 09:35,surfaces covered,,all,,MA,,
        cure,2026-02-16 09:40,into cure,F1,,,MA,,
        cure,2026-02-16 18:05,cooler temperature,F1,37.8,\u00b0F,MA,HT-3,
        cure,2026-02-17 06:40,turned,,,,MA,,
        cure,2026-02-17 06:41,cooler temperature,F1,37.4,\u00b0F,MA,HT-3,
        cure,2026-02-17 18:07,cooler temperature,F1,37.9,\u00b0F,MA,HT-3,
        cure,2026-02-18 06:35,turned,,,,IQ,,
        cure,2026-02-18 06:36,cooler temperature,F1,38.1,\u00b0F,IQ,HT-3,
        cure,2026-02-18 18:08,cooler temperature,F1,37.6,\u00b0F,IQ,HT-3,
        cure,2026-02-19 06:44,turned,,,,IQ,,
        cure,2026-02-19 06:45,cooler temperature,F1,37.9,\u00b0F,IQ,HT-3,
        cure,2026-02-19 18:09,cooler temperature,F1,38.3,\u00b0F,IQ,HT-3,
        cure,2026-02-20 06:38,turned,,,,IQ,,
        cure,2026-02-20 06:39,cooler temperature,F1,36.8,\u00b0F,IQ,HT-3,
        cure,2026-02-20 18:00,cooler temperature,F1,37.1,\u00b0F,IQ,HT-3,
        cure,2026-02-21 07:02,turned,,,,IQ,,
        cure,2026-02-21 07:03,cooler temperature,F1,37.2,\u00b0F,IQ,HT-3,
        cure,2026-02-21 18:01,cooler temperature,F1,38.0,\u00b0F,IQ,HT-3,
        cure,2026-02-22 07:15,turned,,,,MA,,
        cure,2026-02-22 07:16,cooler temperature,F1,39.4,\u00b0F,MA,HT-3,
        cure,2026-02-22 18:02,cooler temperature,F1,38.4,\u00b0F,MA,HT-3,
        cure,2026-02-23 06:50,turned,,,,MA,,
        cure,2026-02-23 06:51,cooler temperature,F1,38.6,\u00b0F,MA,HT-3,
        cure,2026-02-23 14:55,cooler temperature,F1,38.0,\u00b0F,MA,HT-3,
        cure,2026-02-23 15:00,out of cure,,,,MA,,
        cure,2026-02-23 15:02,weight,,4640,g,MA,S-10,
        soak,2026-02-23 15:10,into soak,SK,,,MA,,
        soak,2026-02-23 15:11,water temperature,,39.5,\u00b0F,MA,HT-3,
        soak,2026-02-23 16:08,water temperature,,40.2,\u00b0F,MA,HT-3,
        soak,2026-02-23 16:10,out of soak,,,,MA,,
        soak,2026-02-23 16:14,weight,,4686,g,MA,S-10,
        dry,2026-02-23 16:20,into drying,F2,,,MA,,
        dry,2026-02-23 16:25,cooler temperature,F2,36.9,\u00b0F,MA,HT-3,
        dry,2026-02-23 19:30,cooler temperature,F2,35.8,\u00b0F,MA,HT-3,
        dry,2026-02-24 07:40,cooler temperature,F2,35.6,\u00b0F,MA,HT-3,
        dry,2026-02-24 07:45,surface,,tacky,,MA,,
        dry,2026-02-24 07:50,out of drying,,,,MA,,
        dry,2026-02-24 07:52,weight,,4611,g,MA,S-10,
        smoke,2026-02-24 08:02,into smoke,SM,,,MA,,
        smoke,2026-02-24 08:02,wood,beech,,,MA,,
        smoke,2026-02-24 11:07,internal temperature,thickest,150.4,\u00b0F,MA,HT-3,hand check
        smoke,2026-02-24 11:08,out of smoke,,,,MA,,
        smoke,2026-02-24 11:10,weight,,4196,g,MA,S-10,
        smoke,2026-02-24 11:20,glazed,treacle glaze TG-09,4258,g,MA,S-10,
        chill,2026-02-24 11:38,into chill,F2,,,MA,,
        chill,2026-02-24 11:39,cooler temperature,F2,38.8,\u00b0F,MA,HT-3,
        chill,2026-02-24 16:30,internal temperature,thickest,39.0,\u00b0F,MA,HT-3,hand check
        chill,2026-02-24 18:00,out of chill,,,,MA,,
        chill,2026-02-24 18:02,weight,,4222,g,MA,S-10,
        dispatch,2026-02-24 18:40,packed,26 packs,3900,g,MA,S-10,packs of 150 g
        dispatch,2026-02-24 19:05,ends,,310,g,MA,S-10,
        dispatch,2026-02-24 19:06,waste,,12,g,MA,S-10,
        """;
  }

  /** The plan in force, version 3. */
  static final class Plan {

    private static final String YIELD = ",\n        "
        + "{\"limit\": \"us.319.107.yield\", \"monitored\": \"each lot\", \"by\": \"MA\", \"ifMissed\": \"dry or smoke on\"}";

    private static final String BACON = """
            {
              "code": "%CODE%", "name": "%NAME%",
              "class": "heat treated, not fully cooked, not shelf stable",
              "cut": "%CUT%", "cureMethod": "dry", "steps": ["cure", "soak", "dry", "smoke", "chill"], "between": "2 h",
              "limits": [
                {"limit": "us.424.22-b-3.nitrite", "ccp": "1", "monitored": "each weighing of cure", "by": "MA", "ifMissed": "hold the piece; destroy, or ask the process authority"},
                {"limit": "us.424.21-c.nitrate-bacon", "ccp": "1", "monitored": "each weighing of cure", "by": "MA", "ifMissed": "hold the piece"},
                {"limit": "us.b99.cooling-1", "ccp": "2", "monitored": "logger, each lot", "by": "MA", "ifMissed": "hold the run; the process authority decides"}%YIELD%
              ],
              "ownLimits": [
                {"id": "own.nitrite-floor", "covers": "nitrite floor", "step": "cure", "rank": "critical", "kind": "floor", "quantity": "ingoing nitrite", "atLeast": "120 ppm",
                 "because": "below it the product would not count as cured", "support": "FSIS Directive 7620.3, p. 12 (second-hand)"},
                {"id": "own.cure-days", "covers": "days in cure", "step": "cure", "rank": "operating", "kind": "duration", "from": "into cure", "to": "out of cure", "atLeast": "%DAYS%",
                 "because": "%WHY%", "support": "common practice, no source"},
                {"id": "own.turn", "covers": "turning", "step": "cure", "rank": "operating", "kind": "cadence", "what": "turned", "every": "36 h",
                 "because": "both faces must lie in the cure", "support": "common practice, no source"},
                {"id": "own.cure-cold", "covers": "cold holding", "step": "cure", "rank": "critical", "kind": "holding", "what": "cooler temperature", "atMost": "41 \u00b0F", "every": "16 h",
                 "because": "raw pork is kept cold while it cures", "support": "plan v3, hazard analysis 4"},
                {"id": "own.dry-cold", "covers": "cold holding", "step": "dry", "rank": "critical", "kind": "holding", "what": "cooler temperature", "atMost": "41 \u00b0F", "every": "16 h",
                 "because": "the pellicle dries cold", "support": "plan v3, hazard analysis 6"},
                {"id": "own.come-up", "covers": "come-up", "step": "smoke", "rank": "critical", "kind": "span", "what": "internal temperature", "from": "50 \u00b0F", "to": "130 \u00b0F", "atMost": "6 h",
                 "because": "slow heating lets pathogens grow", "support": "Sindelar et al. 2019, Food Control 104:147-151; plan v3, support file 2"},
                {"id": "own.finish", "covers": "finish", "step": "smoke", "rank": "operating", "kind": "floor", "quantity": "peak internal temperature", "atLeast": "145 \u00b0F",
                 "because": "the house's target; not a lethality claim", "support": "plan v3"}
              ]
            }\
        """;

    private static final String LOIN = """
            {
              "code": "CPL", "name": "Caraway cooked loin",
              "class": "fully cooked, not shelf stable",
              "cut": "loin", "cureMethod": "dry", "steps": ["cure", "soak", "dry", "smoke", "chill"], "between": "2 h",
              "limits": [
                {"limit": "us.424.22-b-3.nitrite", "ccp": "1", "monitored": "each weighing of cure", "by": "MA", "ifMissed": "hold the piece"},
                {"limit": "us.424.21-c.nitrate-bacon", "ccp": "1", "monitored": "each weighing of cure", "by": "MA", "ifMissed": "hold the piece"},
                {"limit": "us.a21.table-2.lethality-6.5", "ccp": "2", "monitored": "logger, each lot", "by": "MA", "ifMissed": "hold the run"},
                {"limit": "us.a21.table-1.humidity", "ccp": "2", "monitored": "logger, each lot", "by": "MA", "ifMissed": "hold the run"},
                {"limit": "us.a21.come-up", "ccp": "2", "monitored": "logger, each lot", "by": "MA", "ifMissed": "hold the run"},
                {"limit": "us.b99.cooling-1", "ccp": "3", "monitored": "logger, each lot", "by": "MA", "ifMissed": "hold the run"}
              ],
              "ownLimits": [
                {"id": "own.cure-cold", "covers": "cold holding", "step": "cure", "rank": "critical", "kind": "holding", "what": "cooler temperature", "atMost": "41 \u00b0F", "every": "16 h",
                 "because": "raw pork is kept cold while it cures", "support": "plan v3, hazard analysis 4"}
              ]
            }\
        """;

    private static final String HEAD = """
        {
          "flitchbook": 1,
          "establishment": {
            "name": "Wrenfold Smokeyard", "number": "W-207", "address": "3 Drove Lane, Harrow Fen",
            "regime": "inspected by the state", "zone": "America/New_York", "altitude": "310 ft", "paper": "Letter", "temperature": "\u00b0F"
          },
          "plan": {"version": "3", "signed": "2026-01-05", "signedBy": "MA", "reassessBy": "2027-01-05"},
          "ruleSets": ["us"],
          "people": [
            {"initials": "MA", "name": "Maud Achterberg", "roles": ["maker"]},
            {"initials": "IQ", "name": "Ismet Quill", "roles": ["maker", "reviewer"]}
          ],
          "instruments": [
            {"id": "S-10", "kind": "scale", "readability": "1 g", "checkEvery": "30 d", "tolerance": "2 g"},
            {"id": "S-01", "kind": "scale", "readability": "0.1 g", "checkEvery": "30 d", "tolerance": "0.2 g"},
            {"id": "S-001", "kind": "scale", "readability": "0.01 g", "checkEvery": "30 d", "tolerance": "0.02 g"},
            {"id": "HT-3", "kind": "thermometer", "accuracy": "1 \u00b0F", "checkEvery": "30 d", "tolerance": "2 \u00b0F"},
            {"id": "LG-A", "kind": "logger", "accuracy": "0.5 \u00b0F", "checkEvery": "90 d", "tolerance": "1 \u00b0F"},
            {"id": "LG-B", "kind": "logger", "accuracy": "0.5 \u00b0F", "humidityAccuracy": "2 %", "checkEvery": "90 d", "tolerance": "1 \u00b0F"},
            {"id": "LG-C", "kind": "logger", "accuracy": "0.5 \u00b0F", "checkEvery": "90 d", "tolerance": "1 \u00b0F"}
          ],
          "places": [
            {"id": "F1", "name": "curing fridge", "kind": "cooler"},
            {"id": "SK", "name": "sink", "kind": "water"},
            {"id": "F2", "name": "fan fridge", "kind": "cooler"},
            {"id": "F3", "name": "crowded fridge", "kind": "cooler"},
            {"id": "F4", "name": "still fridge", "kind": "cooler"},
            {"id": "SM", "name": "smoker", "kind": "smoker"},
            {"id": "SM2", "name": "small smoker", "kind": "smoker"}
          ],
          "ingredients": [
            {"lot": "C1-7741", "name": "Cure No. 1", "sodiumNitrite": "6.25 %", "sodiumNitrate": "0 %", "salt": "93.75 %", "custodian": "MA"},
            {"lot": "RC-118", "name": "Ready Cure", "sodiumNitrite": "0.6 %", "sodiumNitrate": "0 %", "custodian": "MA"}
          ],
        """;

    /** @param more products beside the four of the demo */
    static String text(String... more) {
      List<String> products = new ArrayList<>();
      products.add(bacon("JTB", "Juniper & treacle belly bacon", "belly", "7 d", "a week carries the cure through a 38 mm slab"));
      products.add(bacon("MMB", "Mustard seed & molasses belly bacon", "belly", "7 d", "a week carries the cure through a 40 mm slab"));
      products.add(bacon("BPJ", "Black pepper & birch-syrup jowl bacon", "jowl", "5 d", "five days carry the cure through a 28 mm jowl"));
      products.add(LOIN);
      products.addAll(List.of(more));
      return HEAD + "  \"products\": [\n" + String.join(",\n", products) + "\n  ]\n}\n";
    }

    /** The rule for the yield speaks of bellies only. */
    static String bacon(String code, String name, String cut, String days, String why) {
      return BACON.replace("%CODE%", code).replace("%NAME%", name).replace("%CUT%", cut).replace("%DAYS%", days)
          .replace("%WHY%", why).replace("%YIELD%", cut.equals("belly") ? YIELD : "");
    }
  }
}

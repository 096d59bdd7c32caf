package org.flitchbook.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.Supplier;

/**
 * A bad fact on file about the good lot of the example, drawn by chance.
 *
 * @param kind what it is
 * @param rows each {@code file|row}, added to the end of the file, which may be a new one; or
 *     {@code file|old|new}, a change of what the file says
 */
record BadFact(String kind, List<String> rows) {

  private static final String HEAD = "lot,time,what,item,value,unit,by,instrument,note\n";
  private static final String LOT = "26047-B1";
  private static final LocalDateTime INTO_CURE = LocalDateTime.parse("2026-02-16T09:41");
  private static final LocalDateTime OUT_OF_CURE = LocalDateTime.parse("2026-02-23T14:59");
  private static final LocalDateTime INTO_SMOKE = LocalDateTime.parse("2026-02-24T08:02");
  private static final LocalDateTime FINISH = LocalDateTime.parse("2026-02-24T11:01");
  private static final LocalDateTime COLD = LocalDateTime.parse("2026-02-24T16:40");
  private static final LocalDateTime DONE = LocalDateTime.parse("2026-02-24T18:03");

  void fileIn(Path book) throws IOException {
    for (String row : rows) {
      String[] parts = row.split("\\|", -1);
      Path file = book.resolve(parts[0]);
      Files.createDirectories(file.getParent());
      String before = Files.exists(file) ? Files.readString(file) : HEAD;
      if (parts.length == 3 && !before.contains(parts[1])) {
        throw new AssertionError(parts[0] + " has no " + parts[1]);
      }
      Files.writeString(
          file, parts.length == 3 ? before.replace(parts[1], parts[2]) : before + parts[1] + "\n");
    }
  }

  /** Draws facts. */
  static final class Draw {

    private final SplittableRandom chance;

    Draw(long seed) {
      this.chance = new SplittableRandom(seed);
    }

    private final List<Supplier<BadFact>> kinds =
        List.of(
            () -> one("warm cooler", sheet("cure", "dry", "chill"), warm("cooler temperature")),
            () -> one("warm water", "soak", warm("water temperature")),
            () -> one("warm meat", "cure", warm("received temperature")),
            () ->
                one("warm core", sheet("smoke", "chill", "dispatch"), warm("internal temperature")),
            () -> one("cold cooler", "cure", degrees("cooler temperature", "F1", -20, 24)),
            () -> one("cold water", "soak", degrees("water temperature", "SK", -20, 24)),
            this::cureUnderOtherWord,
            () ->
                one("more cure", "cure", mass(sheet("curing salt", "curing salt", "accelerator"))),
            () -> one("second weight", "cure", mass(sheet("green weight", "rind weight"))),
            this::anotherMethod,
            this::moved,
            this::away,
            this::left,
            this::found,
            this::laboratory,
            this::anotherDay,
            this::instrument,
            this::plan,
            this::layout,
            this::file,
            () -> at("warm after the chill", DONE, DONE.plusHours(3), "chill", core(50, 120)),
            () -> at("warm in the chill", COLD, COLD.plusMinutes(70), "chill", core(50, 120)),
            () -> at("cold at the finish", FINISH, FINISH.plusMinutes(6), "smoke", core(60, 140)),
            () -> at("cure elsewhere", INTO_SMOKE, DONE, sheet("smoke", "chill", "dry"), curing()),
            this::anotherProductOrInTwice,
            () ->
                at(
                    "no review",
                    DONE,
                    DONE.plusHours(3),
                    "dispatch",
                    "dispatched,Fen Larder,900,g,MA,S-10,"),
            this::tooHeavy,
            this::correction,
            this::dispatched,
            this::ofOnePiece,
            this::notCovered,
            () ->
                at(
                    "wet surface",
                    LocalDateTime.parse("2026-02-24T07:46"),
                    LocalDateTime.parse("2026-02-24T07:50"),
                    "dry",
                    "surface,,wet,,MA,,"),
            this::moreThanThereIs,
            this::smokersAir,
            this::enteredBefore,
            this::ofThePlanItself,
            this::foundInPlace,
            this::ofNoLot,
            this::turnedElsewhere,
            this::mistypedLot);

    /** One of the kinds, which come by turns. */
    BadFact fact(int turn) {
      return kinds.get(turn % kinds.size()).get();
    }

    /** A row of a piece that no other row knows, while the lot is one piece. */
    private BadFact ofOnePiece() {
      LocalDateTime time = within(INTO_CURE.plusDays(1), OUT_OF_CURE.minusDays(1));
      String cells =
          sheet(
              "turned,,,,MA,,",
              "weight,,1200,g,MA,S-10,",
              "thickness,,90,mm,MA,,",
              "curing salt,C1-7741,4,g,MA,S-01,",
              "out of cure,,,,MA,,",
              "into cure,F2,,,MA,,",
              "surfaces covered,,all,,MA,,",
              "cooler temperature,F1,37,°F,MA,HT-3,");
      String piece = sheet("b", "2", "thick", "A");
      String file = time.toLocalDate() + "/cure.csv";
      return new BadFact(
          "of one piece",
          List.of(
              file + "|instrument,note|instrument,note,piece",
              row(time, "cure", cells + "," + piece)));
    }

    private BadFact notCovered() {
      String said =
          sheet(
              "none", "no", "top only", "one side", "all but the rind", "not yet", "half", "faces");
      return one("not covered", "cure", "surfaces covered,,%s,,MA,,".formatted(said));
    }

    /** The lot weighed 4222 g at the end. */
    private BadFact moreThanThereIs() {
      int grams = 4400 + chance.nextInt(9000);
      String gone =
          sheet(
              "packed,box 1,%d,g,MA,S-10,",
              "ends,,%d,g,MA,S-10,",
              "waste,,%d,g,MA,S-10,",
              "sample,,%d,g,MA,S-10,",
              "returned,Fen Larder,%d,g,MA,S-10,",
              "destroyed,,%d,g,MA,S-10,",
              "dispatched,Fen Larder,%d,g,MA,S-10,");
      LocalDateTime time = DONE.plusMinutes(chance.nextInt(120));
      return new BadFact(
          "more than there is",
          List.of(
              row(time, "dispatch", "reviewed,,,,IQ,,"),
              row(time.plusMinutes(9), "dispatch", gone.formatted(grams))));
    }

    /** By hand beside the chamber's log, with or without the lot. */
    private BadFact smokersAir() {
      String air =
          switch (chance.nextInt(3)) {
            case 0 -> degrees("wet-bulb temperature", "SM", 300, 440);
            case 1 -> degrees("chamber temperature", "SM", -10, 40);
            default -> degrees("chamber temperature", "SM", 390, 445);
          };
      LocalDateTime time = within(INTO_SMOKE.plusMinutes(40), FINISH);
      return new BadFact(
          "smoker's air", List.of(row(sheet(LOT, ""), "2026-02-24", time, "smoke", air)));
    }

    private BadFact enteredBefore() {
      LocalDateTime time = within(INTO_CURE.plusDays(1), OUT_OF_CURE.minusDays(1));
      String typed =
          time.minusMinutes(2 + chance.nextInt(9000)).toString().replace('T', ' ').substring(0, 16);
      String file = time.toLocalDate() + "/cure.csv";
      return new BadFact(
          "entered before",
          List.of(
              file + "|instrument,note|instrument,note,entered",
              row(
                  sheet(LOT, ""),
                  time.toLocalDate().toString(),
                  time,
                  "cure",
                  "cooler temperature,F1,37.5,°F,MA,HT-3,," + typed)));
    }

    private BadFact ofThePlanItself() {
      return new BadFact(
          "the plan itself",
          List.of(
              "plan.json|"
                  + sheet(
                      "\"signedBy\": \"MA\"|\"signedBy\": \"ZZ\"",
                      "\"reassessBy\": \"2027-01-05\"|\"reassessBy\": \"2026-02-15\"",
                      "\"between\": \"2 h\"|\"between\": \"20 h\"",
                      "\"checkEvery\": \"90 d\"|\"checkEvery\": \"900 d\"",
                      "\"tolerance\": \"2 °F\"|\"tolerance\": \"20 °F\"",
                      "\"tolerance\": \"0.2 g\"|\"tolerance\": \"20 g\"",
                      "\"accuracy\": \"0.5 °F\"|\"accuracy\": \"0.005 °F\"")));
    }

    /** Of a place while the lot lay in it. */
    private BadFact foundInPlace() {
      String place = sheet("F1", "F2", "SM");
      LocalDateTime time =
          switch (place) {
            case "F1" -> within(INTO_CURE, OUT_OF_CURE);
            case "F2" -> within(LocalDateTime.parse("2026-02-24T11:40"), DONE.minusMinutes(5));
            default -> within(INTO_SMOKE, LocalDateTime.parse("2026-02-24T11:07"));
          };
      String cells =
          sheet("found,%s,door stood open,,MA,,", "held,%s,,,MA,,", "cause,%s,fuse,,MA,,");
      return new BadFact(
          "found in its place",
          List.of(row("", time.toLocalDate().toString(), time, "actions", cells.formatted(place))));
    }

    private BadFact ofNoLot() {
      LocalDateTime time = within(INTO_CURE, OUT_OF_CURE);
      String cells =
          sheet("found,the roof,leaks,,MA,,", "held,HT-3,,,MA,,", "explained,gap,,,MA,,power cut");
      return new BadFact(
          "of no lot", List.of(row("", time.toLocalDate().toString(), time, "actions", cells)));
    }

    private BadFact turnedElsewhere() {
      return at("turned elsewhere", INTO_SMOKE, DONE, "cure", "turned,,,,MA,,");
    }

    /** Rows that were meant for the lot, under a code that nothing began. */
    private BadFact mistypedLot() {
      LocalDateTime time = within(INTO_CURE, OUT_OF_CURE);
      String cells =
          sheet(
              "cooler temperature,F1,58,°F,MA,HT-3,",
              "curing salt,C1-7741,12,g,MA,S-01,",
              "out of cure,,,,MA,,",
              "turned,,,,MA,,");
      String lot = sheet("26047-b1", "26047-B11", "26047B1", "26074-B1", "26047-B1.");
      return new BadFact(
          "mistyped lot", List.of(row(lot, time.toLocalDate().toString(), time, "cure", cells)));
    }

    private BadFact tooHeavy() {
      return at(
          "too heavy",
          INTO_SMOKE,
          DONE,
          sheet("smoke", "chill"),
          "weight,,%d,g,MA,S-10,".formatted(5500 + chance.nextInt(3000)));
    }

    private BadFact anotherProductOrInTwice() {
      return chance.nextBoolean() ? anotherProduct() : inTwice();
    }

    private BadFact anotherProduct() {
      return one("another product", "cure", "product,CPL,,,MA,,");
    }

    private BadFact inTwice() {
      return chance.nextBoolean()
          ? one("in twice", "cure", "into cure,F1,,,MA,,")
          : at("in twice", INTO_SMOKE, FINISH, "smoke", "into smoke,SM,,,MA,,");
    }

    private BadFact at(
        String kind, LocalDateTime from, LocalDateTime to, String sheet, String cells) {
      return new BadFact(kind, List.of(row(within(from, to), sheet, cells)));
    }

    private String core(int from, int to) {
      return degrees("internal temperature", "thickest", from, to);
    }

    private String curing() {
      return String.format(
          Locale.ROOT, "curing salt,C1-7741,%.1f,g,MA,S-01,", chance.nextDouble(5, 40));
    }

    /** A reading that misses, and a later row with a reason that makes it good. */
    private BadFact correction() {
      LocalDateTime time = within(INTO_CURE.plusDays(1), OUT_OF_CURE.minusDays(2));
      String file = time.toLocalDate() + "/cure.csv";
      String reading = "cooler temperature,F1,%s,°F,MA,HT-3,%s";
      return new BadFact(
          "correction",
          List.of(
              file + "|instrument,note|instrument,note,corrects",
              row(time, "cure", reading.formatted("58.0", "")),
              row(time, "cure", reading.formatted("38.0", "misread,cure.csv:5"))));
    }

    private BadFact dispatched() {
      LocalDateTime time = DONE.plusMinutes(chance.nextInt(120));
      return new BadFact(
          "dispatched",
          List.of(
              row(time, "dispatch", "reviewed,,,,XX,,"),
              row(time.plusMinutes(9), "dispatch", "dispatched,Fen Larder,4000,g,MA,S-10,")));
    }

    private LocalDateTime within(LocalDateTime from, LocalDateTime to) {
      long minutes = java.time.Duration.between(from, to).toMinutes();
      return from.plusMinutes(chance.nextLong(minutes));
    }

    private BadFact one(String kind, String sheet, String cells) {
      return new BadFact(kind, List.of(row(within(INTO_CURE, OUT_OF_CURE), sheet, cells)));
    }

    private static String row(LocalDateTime time, String sheet, String cells) {
      return row(LOT, time.toLocalDate().toString(), time, sheet, cells);
    }

    private static String row(
        String lot, String folder, LocalDateTime time, String sheet, String cells) {
      String at = time.toString().replace('T', ' ').substring(0, 16);
      return "%s/%s.csv|%s,%s,%s".formatted(folder, sheet, lot, at, cells);
    }

    private String sheet(String... some) {
      return some[chance.nextInt(some.length)];
    }

    private String warm(String what) {
      return degrees(what, sheet("F1", "F2", "SK", "SM", "", "P1", "thickest"), 45, 140);
    }

    private String degrees(String what, String item, int from, int to) {
      double value = from + chance.nextDouble() * (to - from);
      boolean celsius = chance.nextInt(4) == 0;
      return String.format(
          Locale.ROOT,
          "%s,%s,%.1f,%s,MA,HT-3,",
          what,
          item,
          celsius ? (value - 32) / 1.8 : value,
          celsius ? "°C" : "°F");
    }

    private String mass(String what) {
      String item = what.equals("curing salt") ? sheet("C1-7741", "RC-118") : "";
      return "%s,%s,%d,g,MA,S-10,".formatted(what, item, 5 + chance.nextInt(300));
    }

    private BadFact cureUnderOtherWord() {
      String item =
          sheet(
              "C1-7741",
              "c1-7741",
              "Cure No. 1",
              "RC-118",
              "C1 7741",
              "C1_7741",
              "c17741",
              "cure no 1",
              "CURE NO.1",
              "Ready-Cure",
              "sodium nitrite",
              "Saltpetre",
              "nitrate",
              "pink curing salt");
      String what = sheet("salt", "sugar", "other", "accelerator", "glazed");
      String sheet = what.equals("glazed") ? "smoke" : "cure";
      return one(
          "cure under another word",
          sheet,
          "%s,%s,%d,g,MA,S-10,".formatted(what, item, 5 + chance.nextInt(300)));
    }

    private BadFact anotherMethod() {
      return one(
          "another method",
          "cure",
          sheet("pump,,10,%,MA,,", "pick-up,,5,%,MA,,", "pickle,,9000,g,MA,S-10,"));
    }

    /** Into or out of a step when it was not there, or into a step that the plan has not. */
    private BadFact moved() {
      return switch (chance.nextInt(5)) {
        case 0 -> one("out early", "cure", "out of cure,,,,MA,,");
        case 1 -> one("into smoke early", "smoke", "into smoke,SM,,,MA,,");
        case 2 -> one("chilled before", "chill", "into chill,F2,,,MA,,");
        case 3 -> one("out of drying early", "dry", "out of drying,,,,MA,,");
        default ->
            new BadFact(
                "out of chill early",
                List.of(
                    row(
                        within(INTO_SMOKE, LocalDateTime.parse("2026-02-24T11:30")),
                        "chill",
                        "out of chill,,,,MA,,")));
      };
    }

    /** Out of the cure, and into it again more than two hours later. */
    private BadFact away() {
      LocalDateTime out = within(INTO_CURE, OUT_OF_CURE.minusDays(1));
      LocalDateTime again = out.plusMinutes(122 + chance.nextInt(20 * 60));
      return new BadFact(
          "out and in again",
          List.of(
              row(out, "cure", "out of cure,,,,MA,,"),
              row(again, "cure", "into cure," + sheet("F1", "F2") + ",,,MA,,")));
    }

    /** It left while it was held, or before it was chilled. */
    private BadFact left() {
      boolean held = chance.nextBoolean();
      LocalDateTime time =
          held ? DONE.plusMinutes(chance.nextInt(180)) : within(INTO_SMOKE, DONE.minusMinutes(9));
      String gone = sheet("dispatched,Fen Larder,2000,g,MA,S-10,", "packed,box 1,2000,g,MA,S-10,");
      return new BadFact(
          "left",
          List.of(
              row(time, "actions", held ? "held,tag T-9,,,MA,," : "cause,,checked,,MA,,"),
              row(time.plusMinutes(5), "dispatch", "reviewed,,,,IQ,,"),
              row(time.plusMinutes(9), "dispatch", gone)));
    }

    private BadFact found() {
      return new BadFact(
          "found",
          List.of(
              row(
                  within(INTO_CURE, DONE.plusHours(3)),
                  "actions",
                  sheet(
                      "found,,fridge door stood open,,MA,,",
                      "held,tag T-9,,,MA,,",
                      "held,tag T-9,2000,g,MA,S-10,",
                      "cause,,the fridge failed overnight,,MA,,",
                      "disposition,,4222,g,MA,S-10,",
                      "evaluated,,smells sour,,MA,,"))));
    }

    private BadFact laboratory() {
      return new BadFact(
          "laboratory",
          List.of(
              row(
                  DONE.plusMinutes(5 + chance.nextInt(200)),
                  "lab",
                  sheet(
                      "residual nitrite,,0.05,%,MA,,",
                      "residual nitrate,,0.2,%,MA,,",
                      "water activity,,0.99,,MA,,",
                      "pH,,7.9,,MA,,",
                      "moisture,,88,%,MA,,"))));
    }

    /** In the folder of one day with the time of another, of the lot or of a place alone. */
    private BadFact anotherDay() {
      LocalDateTime time = within(INTO_CURE, OUT_OF_CURE);
      int off = 2 + chance.nextInt(400);
      String lot = sheet(LOT, "");
      return new BadFact(
          "another day",
          List.of(
              row(
                  lot,
                  time.toLocalDate().toString(),
                  time.minusDays(off),
                  "cure",
                  degrees("cooler temperature", "F1", 35, 90))));
    }

    /** Found wrong after it was used. */
    private BadFact instrument() {
      return new BadFact(
          "instrument",
          List.of(
              row(
                  "",
                  "2026-02-24",
                  DONE.plusMinutes(chance.nextInt(200)),
                  "instruments",
                  sheet(
                      "ice point,,37.9,°F,MA,HT-3,",
                      "ice point,,26.0,°F,MA,HT-3,",
                      "ice point,,36.0,°F,MA,LG-A,",
                      "check weight,1000 g,1009,g,MA,S-10,",
                      "check weight,100 g,97.5,g,MA,S-01,"))));
    }

    /** A key that nothing reads, or a limit that is looser than its source. */
    private BadFact plan() {
      return new BadFact(
          "plan",
          List.of(
              "plan.json|"
                  + sheet(
                      "\"readability\": \"0.1 g\"|\"readability\": \"0.1 g\", \"offset\": \"2 g\"",
                      "\"cut\": \"belly\"|\"cut\": \"belly\", \"holdUntilTested\": true",
                      "\"between\": \"2 h\"|\"between\": \"20 h\", \"betwen\": \"2 h\"",
                      "\"zone\"|\"temperatureOffset\": \"5 °F\", \"zone\"",
                      "\"ruleSets\"|\"suspended\": \"2026-02-20\", \"ruleSets\"",
                      "\"sodiumNitrite\": \"6.25 %\"|\"sodiumNitrite\": \"62.5 %\"",
                      "\"sodiumNitrite\": \"6.25 %\"|\"sodiumNitrite\": \"0.625 %\"",
                      "\"signed\": \"2026-01-05\"|\"signed\": \"2026-02-20\"",
                      "\"atMost\": \"41 °F\", \"every\": \"16 h\"|\"atMost\": \"41 °C\", \"every\":"
                          + " \"16 h\"",
                      "\"kind\": \"cooler\"|\"kind\": \"smoker\"")));
    }

    private BadFact layout() {
      return new BadFact(
          "layout of a log",
          List.of(
              "2026-02-24/logs.json|"
                  + sheet(
                      "\"item\": \"P1\"|\"item\": \"P1\", \"offset\": \"4 °F\"",
                      "\"unit\": \"°F\"|\"unit\": \"°C\"",
                      "\"column\": \"P1\"|\"column\": \"Air\"",
                      "\"instrument\": \"LG-A\"|\"instrument\": \"LG-A\", \"failed\": true",
                      "America/New_York|America/Chicago",
                      "\"lot\": \"26047-B1\"|\"lot\": \"26047-B2\"",
                      "probes*.csv|probes-b.csv",
                      "\"place\": \"SM\"|\"place\": \"F2\"")));
    }

    private BadFact file() {
      String name = sheet("cure", "Chill", "smoke", "dispatch", "probes-b", "fridge", "notes 2");
      String ending = sheet(".csv", ".xlsx", ".ods", ".tsv", ".xls", ".XLSX");
      String where =
          sheet(
              "",
              "2026-3-05/",
              "20260224/",
              "2026-02-24 late/",
              "Oct 29/",
              "2026-02-24/late/",
              "2026-02-20/x/y/");
      return new BadFact(
          "file", List.of(where + name + ending + "|26047-B1,2026-02-24 12:00,turned,,,,MA,,"));
    }
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The good lot of the example with one bad fact on file, drawn by chance: a row or a file that no
 * limit looks at. It is never met with exit status 0.
 */
final class OneBadFactTest {

  private static final long SEED = 20261130;
  private static final int FACTS = 1_200;
  private static final String HEAD = "lot,time,what,item,value,unit,by,instrument,note\n";
  private static final LocalDateTime BEGIN = LocalDateTime.parse("2026-02-16T09:41");
  private static final LocalDateTime INTO_SMOKE = LocalDateTime.parse("2026-02-24T08:02");

  private static final LocalDateTime FINISH = LocalDateTime.parse("2026-02-24T11:01");
  private static final LocalDateTime COLD = LocalDateTime.parse("2026-02-24T16:40");
  private static final LocalDateTime OUT_OF_CHILL = LocalDateTime.parse("2026-02-24T18:05");
  private static final String CORE = "internal temperature,thickest,";

  /** In the cure, which ends on the 23rd. */
  private static final int CURE_MINUTES = 7 * 24 * 60 + 5 * 60;

  @TempDir private Path folder;
  private SplittableRandom chance = new SplittableRandom(SEED);

  /** What a fact is, and the files that it adds to. */
  private record Fact(String name, List<String> rows) {}

  @Test
  void a_lot_with_one_bad_fact_is_never_met_with_exit_0() throws IOException {
    List<String> unseen = new ArrayList<>();
    int facts = SeededRun.cases("One bad fact", SEED, FACTS);
    for (int i = 0; i < facts; i++) {
      chance = new SplittableRandom(SEED + i);
      Path book = Tree.example(folder.resolve(String.valueOf(i)));
      Fact fact = fact(i % 20);
      for (String row : fact.rows()) {
        add(book, row);
      }
      Ran ran = Ran.of("check", book.resolve(Tree.DAY));
      if (ran.status() == 0) {
        unseen.add(i + " " + fact);
      }
    }
    assertEquals(List.of(), unseen);
  }

  /** A row as {@code file|line}; the file may be a new one. */
  private static void add(Path book, String row) throws IOException {
    Path file = book.resolve(row.substring(0, row.indexOf('|')));
    Files.createDirectories(file.getParent());
    String before = Files.exists(file) ? Files.readString(file) : HEAD;
    Files.writeString(file, before + row.substring(row.indexOf('|') + 1) + "\n");
  }

  private Fact fact(int kind) {
    return switch (kind) {
      case 0 ->
          one("warm cooler", sheet("cure", "dry", "chill"), degrees("cooler temperature", 45, 95));
      case 1 -> one("cold cooler", "cure", degreesAt("cooler temperature", "F1", -20, 24));
      case 2 ->
          one(
              "core out of the heat",
              sheet("smoke", "chill"),
              degrees("internal temperature", 45, 150));
      case 3 ->
          one(
              "cure under another word",
              "cure",
              mass(
                  sheet("salt", "sugar", "other", "accelerator"),
                  sheet("C1-7741", "c1-7741", "Cure No. 1", "RC-118")));
      case 4 -> one("rind", "cure", mass("rind weight", ""));
      case 5 ->
          one(
              "another method",
              "cure",
              sheet("pump,,10,%,MA,,", "pick-up,,5,%,MA,,", "pickle,,9000,g,MA,S-10,"));
      case 6 -> away();
      case 7 -> left();
      case 8, 9 -> file();
      default -> later(kind);
    };
  }

  /** Facts at a time of their own. */
  private Fact later(int kind) {
    return switch (kind) {
      case 10 -> at("warm after the chill", OUT_OF_CHILL, 180, "chill", CORE + warm(50, 120));
      case 11 -> at("warm in the chill", COLD, 70, "chill", CORE + warm(50, 120));
      case 12 -> at("cold at the finish", FINISH, 6, "smoke", CORE + warm(60, 140));
      case 13 -> at("more curing salt", BEGIN, CURE_MINUTES, "cure", curing());
      case 14 ->
          at("curing salt elsewhere", INTO_SMOKE, 600, sheet("smoke", "chill", "dry"), curing());
      case 15 ->
          at(
              "failed check",
              OUT_OF_CHILL,
              180,
              "instruments",
              sheet(
                  "ice point,,36.0,°F,MA,HT-3,",
                  "ice point,,34.5,°F,MA,LG-A,",
                  "check weight,1000 g,1010,g,MA,S-10,"));
      case 16 -> at("another product", BEGIN, CURE_MINUTES, "cure", "product,CPL,,,MA,,");
      case 17 -> at("weighed twice", BEGIN, CURE_MINUTES, "cure", "green weight,,5200,g,MA,S-10,");
      case 18 ->
          at(
              "left without a review",
              OUT_OF_CHILL,
              180,
              "dispatch",
              "dispatched,Fen Larder,900,g,MA,S-10,");
      default ->
          at(
              "too heavy",
              INTO_SMOKE,
              600,
              sheet("smoke", "chill"),
              "weight,,%d,g,MA,S-10,".formatted(5500 + chance.nextInt(3000)));
    };
  }

  private String curing() {
    return String.format(
        Locale.ROOT, "curing salt,C1-7741,%.1f,g,MA,S-01,", chance.nextDouble(5, 40));
  }

  private String warm(int from, int to) {
    return String.format(Locale.ROOT, "%.1f,°F,MA,HT-3,", chance.nextDouble(from, to));
  }

  private Fact at(String name, LocalDateTime from, int minutes, String sheet, String cells) {
    String row = row(from.plusMinutes(chance.nextInt(minutes)), sheet, cells);
    return new Fact(
        name, List.of(sheet.equals("instruments") ? row.replace("26047-B1,", ",") : row));
  }

  private Fact one(String name, String sheet, String cells) {
    LocalDateTime time = BEGIN.plusMinutes(chance.nextInt(CURE_MINUTES));
    return new Fact(name, List.of(row(time, sheet, cells)));
  }

  private static String row(LocalDateTime time, String sheet, String cells) {
    return "%s/%s.csv|26047-B1,%s,%s"
        .formatted(time.toLocalDate(), sheet, time.toString().replace('T', ' '), cells);
  }

  private String sheet(String... some) {
    return some[chance.nextInt(some.length)];
  }

  private String degrees(String what, int from, int to) {
    return degreesAt(what, sheet("F1", "F2", "SK", "SM", ""), from, to);
  }

  private String degreesAt(String what, String item, int from, int to) {
    return String.format(
        Locale.ROOT,
        "%s,%s,%.1f,°F,MA,HT-3,",
        what,
        item,
        from + chance.nextDouble() * (to - from));
  }

  private String mass(String what, String item) {
    return "%s,%s,%d,g,MA,S-10,".formatted(what, item, 5 + chance.nextInt(300));
  }

  /** Out of the cure, and into it again more than two hours later. */
  private Fact away() {
    LocalDateTime out = BEGIN.plusMinutes(chance.nextInt(CURE_MINUTES - 24 * 60));
    LocalDateTime again = out.plusMinutes(122 + chance.nextInt(20 * 60));
    return new Fact(
        "out and in again",
        List.of(
            row(out, "cure", "out of cure,,,,MA,,"),
            row(again, "cure", "into cure," + sheet("F1", "F2") + ",,,MA,,")));
  }

  /** It left while it was held, or before it was chilled. */
  private Fact left() {
    boolean held = chance.nextBoolean();
    LocalDateTime time = INTO_SMOKE.plusMinutes((held ? 660 : 0) + chance.nextInt(180));
    return new Fact(
        "left",
        List.of(
            row(time, "actions", held ? "held,tag T-9,,,MA,," : "cause,,checked,,MA,,"),
            row(time.plusMinutes(5), "dispatch", "reviewed,,,,IQ,,"),
            row(time.plusMinutes(9), "dispatch", "dispatched,Fen Larder,2000,g,MA,S-10,")));
  }

  private Fact file() {
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
    return new Fact(
        "file", List.of(where + name + ending + "|26047-B1,2026-02-24 12:00,turned,,,,MA,,"));
  }
}

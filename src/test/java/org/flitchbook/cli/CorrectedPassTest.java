package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A correction that turns a miss into a pass is asked about; what was never a miss is not. */
final class CorrectedPassTest {

  private static final String CURE = "2026-02-19/cure.csv";

  @TempDir private Path folder;

  private Path corrected(String before, String now) throws Exception {
    Path book = Tree.example(folder.resolve(before + " " + now));
    Path sheet = book.resolve(CURE);
    Tree.edit(sheet, "instrument,note", "instrument,note,corrects");
    String row = "26047-B1,2026-02-19 12:00,cooler temperature,F1,%s,°F,MA,HT-3,%s\n";
    Files.writeString(
        sheet,
        Files.readString(sheet)
            + row.formatted(before, "")
            + row.formatted(now, "misread,cure.csv:5"));
    return book;
  }

  @ParameterizedTest
  @CsvSource({"41.1, 38.0, 1", "41.0, 38.0, 0", "38.0, 38.4, 0", "58.0, 38.0, 1", "38.0, 41.1, 1"})
  void a_miss_that_was_corrected_away_is_asked_about(String before, String now, int status)
      throws Exception {
    Ran ran = Ran.of("check", corrected(before, now).resolve(Tree.DAY)).expect(status);
    assertEquals(
        status == 1 && now.equals("38.0"),
        ran.out()
            .replaceAll("\\s+", " ")
            .contains(
                "ask (correction to be explained): 2026-02-19/cure.csv:6:value: found cold holding"
                    + " is not met by 2026-02-19/cure.csv:5 as it was first written"),
        ran.out());
  }

  /** Out of the smoke at 11:08; two hours are allowed between two steps. */
  @ParameterizedTest
  @CsvSource({"13:07, 0", "13:08, 1", "13:58, 1"})
  void a_pause_that_was_corrected_away_is_asked_about(String before, int status) {
    Path book = Tree.example(folder.resolve(before.replace(':', '-')));
    Path sheet = book.resolve("2026-02-24/chill.csv");
    Tree.edit(sheet, "instrument,note", "instrument,note,corrects");
    Tree.edit(sheet, "11:38,into chill", before + ",into chill");
    String row = "26047-B1,2026-02-24 11:38,into chill,F2,,,MA,,wrong hour,chill.csv:2\n";
    Tree.write(sheet, Tree.text(sheet) + row);
    Ran ran = Ran.of("check", book.resolve(Tree.DAY)).expect(status);
    assertEquals(status == 1, ran.out().contains("correction to be explained"), ran.out());
  }

  @Test
  void it_is_answered_by_a_reading_of_another_person_with_another_instrument() throws Exception {
    Path book = corrected("58.0", "38.0");
    Path plan = book.resolve("plan.json");
    Tree.edit(
        plan,
        "{\"id\": \"LG-A\"",
        "{\"id\": \"HT-4\", \"kind\": \"thermometer\", \"accuracy\": \"1 °F\","
            + " \"checkEvery\": \"30 d\", \"tolerance\": \"2 °F\"}, {\"id\": \"LG-A\"");
    Path checks = book.resolve("2026-02-16/instruments.csv");
    Files.writeString(
        checks, Files.readString(checks) + ",2026-02-16 06:52,ice point,,32.2,°F,MA,HT-4,\n");
    Path sheet = book.resolve(CURE);
    Files.writeString(
        sheet,
        Files.readString(sheet)
            + "26047-B1,2026-02-19 12:02,cooler temperature,F1,38.1,°F,IQ,HT-4,\n");
    Path actions = book.resolve("2026-02-19/actions.csv");
    Files.writeString(
        actions,
        "lot,time,what,item,value,unit,by,instrument,note\n"
            + "26047-B1,2026-02-19 12:05,explained,correction to be explained cure.csv:6:value,"
            + "2026-02-19/cure.csv:7,,IQ,,read again together\n");
    Ran.of("check", book.resolve(Tree.DAY)).expect(0);
  }

  /** A time of next year was a slip of the pen: the lot is judged at the end of its day. */
  @Test
  void a_corrected_time_does_not_move_the_moment_judged() throws Exception {
    Path book = Tree.example(folder);
    Path sheet = book.resolve("2026-02-24/chill.csv");
    Tree.edit(sheet, "instrument,note", "instrument,note,corrects");
    Files.writeString(
        sheet,
        Files.readString(sheet)
            + "26047-B1,2027-02-24 17:00,cooler temperature,F2,38.0,°F,MA,HT-3,\n"
            + "26047-B1,2026-02-24 17:00,cooler temperature,F2,38.0,°F,MA,HT-3,year,chill.csv:7\n");
    assertEquals(
        "2026-02-25T00:00-05:00",
        Ran.of("check", "--json", book.resolve(Tree.DAY)).json().get("judgedAt").asText());
  }
}

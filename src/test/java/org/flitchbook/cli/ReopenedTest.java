package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A check on the day after brings back the lot that was done with, where the check failed. */
final class ReopenedTest {

  private static final String NEXT = "2026-02-25";

  @TempDir private Path folder;

  /** The ice point is 32 °F; HT-3 may be off by 2 °F. */
  private Path checked(String reading) throws IOException {
    Path book = Tree.example(folder);
    Path day = Files.createDirectories(book.resolve(NEXT));
    Files.writeString(
        day.resolve("instruments.csv"),
        "lot,time,what,item,value,unit,by,instrument,note\n,"
            + NEXT
            + " 07:00,ice point,,"
            + reading
            + ",°F,MA,HT-3,\n");
    return day;
  }

  @ParameterizedTest
  @CsvSource({"34.0, 0, 0", "34.1, 1, 1", "35.1, 1, 1", "29.9, 1, 1"})
  void a_failed_check_reopens_the_lots_since_the_last_good_one(String reading, int status, int lots)
      throws IOException {
    JsonNode day = Ran.of("check", checked(reading), "--json").expect(status).json();
    assertEquals(lots, day.path("lots").size());
  }

  @Test
  void the_lot_gets_a_record_of_that_day_which_says_why() throws IOException {
    Path day = checked("35.1");
    Path out = folder.resolve("out");
    Ran.of("close", day, "--out", out).expect(1);
    String record = Tree.text(out.resolve(NEXT).resolve("r1").resolve("26047-B1.json"));
    assertTrue(record.contains("off by 3.1 °F at its next check"), record);
  }
}

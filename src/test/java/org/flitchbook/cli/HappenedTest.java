package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Releases, dispatches and failed checks reach the ledger once, at the close that finds them. */
final class HappenedTest {

  private static final String HEAD = "lot,time,what,item,value,unit,by,instrument,note\n";
  private static final String REVIEWED = "26047-B1,2026-02-24 19:00,reviewed,,,,IQ,,\n";
  private static final String SOLD =
      "26047-B1,2026-02-24 20:15,dispatched,Fen Larder,2.5,kg,MA,,\n";

  @TempDir private Path folder;
  private Path book;
  private Path day;

  @BeforeEach
  void copy() {
    book = Tree.example(folder);
    day = book.resolve(Tree.DAY);
  }

  private void dispatch(String rows) throws Exception {
    Files.writeString(day.resolve("dispatch.csv"), HEAD + rows);
  }

  private void close(int status) {
    Ran.of("close", day, "--as", "MA", "--reason", "more was written down").expect(status);
    assertEquals(List.of(), Chain.faults(book));
  }

  @Test
  void a_review_of_a_lot_that_meets_its_limits_releases_it() throws Exception {
    dispatch(REVIEWED);
    close(0);
    assertEquals(List.of("closed r1", "released r1 26047-B1"), Chain.events(book));
    assertEquals(
        Map.of(
            "reviewed by", "IQ",
            "reviewed at", "2026-02-24T19:00-05:00",
            "judged at", "2026-02-25T05:00:00Z"),
        facts());
  }

  private Map<String, String> facts() {
    JsonNode last = Chain.last(book);
    return Chain.texts(last.get("facts"));
  }

  @Test
  void what_left_the_house_is_told_with_customer_quantity_and_time() throws Exception {
    dispatch(REVIEWED + SOLD);
    close(0);
    assertEquals(
        List.of("closed r1", "released r1 26047-B1", "dispatched r1 26047-B1"), Chain.events(book));
    assertEquals(
        Map.of(
            "customer", "Fen Larder",
            "quantity", "2.5 kg",
            "time", "2026-02-24T20:15-05:00",
            "by", "MA"),
        facts());
  }

  @Test
  void what_the_ledger_tells_already_is_not_told_again() throws Exception {
    dispatch(REVIEWED);
    close(0);
    dispatch(REVIEWED + SOLD);
    close(0);
    close(0);
    assertEquals(
        List.of("closed r1", "released r1 26047-B1", "amended r2", "dispatched r2 26047-B1"),
        Chain.events(book));
  }

  @Test
  void a_lot_that_misses_a_limit_is_not_released_by_a_review() throws Exception {
    missALimit();
    dispatch(REVIEWED);
    close(1);
    assertEquals(List.of("closed r1"), Chain.events(book));
  }

  /** Twice the curing salt is too much nitrite. */
  private void missALimit() {
    Tree.edit(book.resolve("2026-02-16").resolve("cure.csv"), ",11.5,g,", ",23.0,g,");
  }

  @Test
  void a_released_lot_that_turns_out_to_miss_a_limit_is_held_again() throws Exception {
    dispatch(REVIEWED);
    close(0);
    missALimit();
    close(1);
    assertEquals(
        List.of("closed r1", "released r1 26047-B1", "amended r2", "release withdrawn r2 26047-B1"),
        Chain.events(book));
    assertEquals("not met", facts().get("verdict"));
  }

  @Test
  void an_earlier_day_that_is_closed_later_withdraws_nothing() throws Exception {
    dispatch(REVIEWED);
    close(0);
    Ran.of("close", book.resolve("2026-02-23")).expect(0);
    assertEquals(List.of("closed r1", "released r1 26047-B1", "closed r1"), Chain.events(book));
  }

  @Test
  void a_failed_check_of_an_instrument_is_told() throws Exception {
    Files.writeString(
        day.resolve("instruments.csv"), HEAD + ",2026-02-24 19:30,ice point,,35.0,F,MA,HT-3,\n");
    Ran.of("close", day);
    assertEquals(List.of("closed r1", "instrument failed r1 HT-3"), Chain.events(book));
    assertEquals(
        Map.of(
            "check", "ice point",
            "read", "35.0 °F",
            "error", "3 °F",
            "time", "2026-02-24T19:30-05:00",
            "by", "MA"),
        facts());
  }
}

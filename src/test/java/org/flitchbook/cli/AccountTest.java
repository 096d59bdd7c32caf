package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** What is added up about the lots of a day stands in its JSON, as the pages print it. */
final class AccountTest {

  /** The keys of every lot's account; the rest stand where there is something to say. */
  private static final Set<String> ALWAYS =
      Set.of(
          "steps",
          "timeAbove",
          "yields",
          "rind",
          "distribution",
          "held",
          "keepUntil",
          "evidence",
          "open",
          "deviations",
          "margins",
          "delays",
          "instruments",
          "readings");

  private static final Set<String> SOMETIMES = Set.of("massBalance", "reviewedAfter");

  @TempDir private static Path folder;
  private static JsonNode demo;

  @BeforeAll
  static void check() {
    demo = Ran.of("check", "--json", Tree.DEMO.resolve(Tree.DAY)).expect(1).json();
  }

  private static JsonNode account(JsonNode day, String lot) {
    for (JsonNode each : day.get("lots")) {
      if (each.get("lot").asText().equals(lot)) {
        return each.get("account");
      }
    }
    throw new AssertionError("no lot " + lot);
  }

  @Test
  void every_lot_has_every_key() {
    for (JsonNode lot : demo.get("lots")) {
      Set<String> keys = new TreeSet<>();
      lot.get("account").fieldNames().forEachRemaining(keys::add);
      keys.removeAll(SOMETIMES);
      assertEquals(new TreeSet<>(ALWAYS), keys, lot.get("lot").asText());
    }
  }

  /** A row: a lot, the path of a value in its account, and the value as JSON. */
  private record Figure(String lot, String path, String json) {}

  @TestFactory
  Stream<DynamicTest> figures_that_a_pocket_calculator_gives() {
    return Stream.of(
            new Figure("26047-B1", "/distribution/greenWeight", "{\"value\":4812,\"unit\":\"g\"}"),
            new Figure("26047-B1", "/distribution/left", "{\"value\":3900,\"unit\":\"g\"}"),
            // 4222 − 3900 − 310 − 12
            new Figure("26047-B1", "/massBalance/unexplained/result", "\"0 g\""),
            // 4640 / 4812, 4686 / 4640
            new Figure("26047-B1", "/yields/1/ofGreen", "{\"value\":96.425603,\"unit\":\"%\"}"),
            new Figure("26047-B1", "/yields/2/ofBefore", "{\"value\":100.991379,\"unit\":\"%\"}"),
            new Figure("26047-B1", "/keepUntil/until", "\"2028-02-24\""),
            new Figure("26047-B1", "/keepUntil/fromShipment", "false"),
            // 50.634 of 200 ppm
            new Figure("26047-B1", "/margins/0/share/value", "25.316916"),
            new Figure("26047-B1", "/evidence/readings", "788"),
            new Figure("26043-L1", "/open/deviations", "3"),
            new Figure("26043-L1", "/held/left", "{\"value\":2541,\"unit\":\"g\"}"),
            // 272 min where 90 are allowed
            new Figure("26043-L1", "/deviations/2/beyond", "{\"value\":182,\"unit\":\"min\"}"),
            new Figure("26043-L1", "/deviations/2/stages/0/from", "\"2026-02-23T15:47-05:00\""))
        .map(row -> DynamicTest.dynamicTest(row.lot() + row.path(), () -> figure(row)));
  }

  private static void figure(Figure row) {
    assertEquals(row.json(), account(demo, row.lot()).at(row.path()).toString());
  }

  @Test
  void the_day_counts_its_lots() {
    JsonNode day = demo.get("account");
    assertEquals("{\"not met\":4,\"pending\":1,\"met\":2}", day.get("verdicts").toString());
    assertEquals(demo.get("lots").size(), day.get("lots").asInt());
    assertEquals(6, day.get("deviations").asInt());
  }

  @Test
  void the_time_in_the_warm_is_what_the_page_says() {
    Path records = DemoDay.records();
    for (JsonNode lot : demo.get("lots")) {
      String code = lot.get("lot").asText();
      String page = Pdfs.text(records.resolve(code + ".pdf")).replaceAll("\\s+", " ");
      JsonNode time = lot.get("account").get("timeAbove");
      if (!time.get("watched").isEmpty()) {
        String total = shown(time.get("total").get(0)) + " " + shown(time.get("total").get(1));
        String row = "total all steps the worst " + total;
        assertTrue(page.contains(row), code + ": " + row + " is not in " + page);
      }
    }
  }

  private static String shown(JsonNode inside) {
    int minutes = inside.get("longest").get("value").asInt();
    List<String> shown = new ArrayList<>();
    if (minutes >= 60) {
      shown.add(minutes / 60 + " h");
    }
    if (minutes < 60 || minutes % 60 > 0) {
      shown.add(minutes % 60 + " min");
    }
    return String.join(" ", shown);
  }

  /** Half past eleven at night in New York is the next day in London. */
  @Test
  void a_record_is_kept_from_the_last_shipment_by_the_day_of_the_house() throws Exception {
    Path book = Tree.copy(Tree.DEMO, folder.resolve("shipped"));
    Path day = Files.createDirectory(book.resolve("2026-02-27"));
    Files.writeString(
        day.resolve("dispatch.csv"),
        """
        lot,time,what,item,value,unit,by,instrument,note
        26047-B1,2026-02-27 08:00,reviewed,,,,IQ,,
        26047-B1,2026-02-27 23:30,dispatched,Fen Larder,2250,g,MA,,
        """);
    JsonNode account = account(Ran.of("check", "--json", day).json(), "26047-B1");
    assertEquals("2026-02-27", account.at("/keepUntil/from").asText());
    assertEquals("2028-02-27", account.at("/keepUntil/until").asText());
    assertEquals("true", account.at("/keepUntil/fromShipment").toString());
    assertEquals("1650", account.at("/distribution/left/value").asText());
    // From the last pack, 2026-02-24 19:06, to the review.
    assertEquals(60.9, account.at("/reviewedAfter/value").asDouble(), 0.05);
  }
}

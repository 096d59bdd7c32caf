package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.flitchbook.Golden;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** A code is followed through the demo book, with a sale and a return. */
final class TraceTest {

  private static final String SOLD =
      """
      26047-B1,2026-02-25 08:00,reviewed,,,,IQ,,
      26047-B1,2026-02-25 08:30,dispatched,Fen Larder,2250,g,MA,,
      26047-B1,2026-02-25 09:00,dispatched,Saltmarsh Stores,1500,g,MA,,
      """;

  private static final String RETURNED =
      """
      26047-B1,2026-02-27 10:00,returned,Fen Larder,150,g,MA,,
      26047-B1,2026-02-27 10:10,destroyed,,150,g,MA,,
      """;

  @TempDir private Path folder;
  private Path book;

  @BeforeEach
  void sell() throws Exception {
    book = Tree.demo(folder);
    String head = "lot,time,what,item,value,unit,by,instrument,note\n";
    Path sold = Files.createDirectory(book.resolve("2026-02-25"));
    Files.writeString(sold.resolve("dispatch.csv"), head + SOLD);
    Path returned = Files.createDirectory(book.resolve("2026-02-27"));
    Files.writeString(returned.resolve("dispatch.csv"), head + RETURNED);
  }

  private JsonNode trace(String code) {
    return Ran.of("trace", code, "--book", book, "--json").expect(0).json();
  }

  /** A row: a code, what it is, and the lots that it touches. */
  private record Followed(String code, String is, List<String> lots) {}

  @TestFactory
  Stream<DynamicTest> a_code_leads_to_the_lots_that_it_touched() {
    return Stream.of(
            new Followed("26047-B1", "lot", List.of("26047-B1")),
            new Followed(
                "C1-7741",
                "ingredient",
                List.of(
                    "26043-L1",
                    "26044-B1",
                    "26045-B1",
                    "26045-B2",
                    "26047-B1",
                    "26048-J1",
                    "26055-B1")),
            new Followed(
                "DE-0212", "supplier lot", List.of("26045-B1", "26045-B2", "26047-B1", "26048-J1")),
            new Followed("Fen Larder", "customer", List.of("26047-B1")),
            new Followed("fen larder", "customer", List.of("26047-B1")))
        .map(row -> DynamicTest.dynamicTest(row.code(), () -> followed(row)));
  }

  private void followed(Followed row) {
    JsonNode trace = trace(row.code());
    assertEquals(row.is(), trace.get("is").get(0).asText());
    assertEquals(row.lots(), trace.get("lots").findValuesAsText("lot"));
  }

  @Test
  void a_customer_leads_to_what_the_customer_got_and_gave_back() {
    List<String> went = new ArrayList<>();
    trace("Fen Larder")
        .get("lots")
        .get(0)
        .get("went")
        .forEach(
            each ->
                went.add(
                    String.join(
                        " ",
                        each.get("what").asText(),
                        each.get("quantity").asText(),
                        each.get("time").asText())));
    assertEquals(
        List.of(
            "dispatched 2250 g 2026-02-25T08:30-05:00", "returned 150 g 2026-02-27T10:00-05:00"),
        went);
  }

  @Test
  void what_should_be_left_is_what_was_packed_and_did_not_leave() {
    assertEquals(
        Map.of(
            "green weight", "4812",
            "packed", "3900",
            "dispatched", "3750",
            "returned", "150",
            "destroyed", "150",
            "left", "150"),
        Chain.texts(trace("26047-B1").get("lots").get(0).get("grams")));
  }

  @Test
  void a_sale_without_a_weight_leaves_no_balance() throws Exception {
    Tree.edit(book.resolve("2026-02-25").resolve("dispatch.csv"), "Stores,1500,g", "Stores,,");
    JsonNode grams = trace("26047-B1").get("lots").get(0).get("grams");
    assertTrue(grams.path("left").isMissingNode() && grams.path("dispatched").isMissingNode());
    assertTrue(
        Ran.of("trace", "26047-B1", "--book", book).expect(0).out().contains("NOT RECORDED"));
  }

  @TestFactory
  Stream<DynamicTest> the_words_of_a_trace_stay_as_they_are() {
    return Stream.of("26047-B1", "C1-7741", "HT-3", "Fen Larder")
        .map(code -> DynamicTest.dynamicTest(code, () -> said(code)));
  }

  private void said(String code) {
    String text = Ran.of("trace", code, "--book", book).expect(0).out();
    Golden.check("cli/trace/" + code.replace(' ', '-') + ".out", text);
  }

  @Test
  void a_code_that_the_book_does_not_know_is_wrong_use() {
    Ran ran = Ran.of("trace", "26099-X9", "--book", book).expect(2);
    assertEquals(
        "flitchbook: \"26099-X9\" is no lot, no ingredient's or supplier's lot, no instrument and"
            + " no customer of wrenfold\n",
        ran.err());
  }

  @Test
  void an_instrument_of_the_plan_that_was_never_used_touches_nothing() {
    String scale = "{\"id\": \"S-10\", \"kind\": \"scale\", ";
    String rest = "\"readability\": \"1 g\", \"checkEvery\": \"30 d\", \"tolerance\": \"2 g\"}";
    String spare = scale.replace("S-10", "S-99") + rest + ",\n    ";
    Tree.edit(book.resolve("plan.json"), scale, spare + scale);
    JsonNode trace = trace("S-99");
    assertEquals("instrument", trace.get("is").get(0).asText());
    assertEquals(0, trace.get("lots").size());
  }
}

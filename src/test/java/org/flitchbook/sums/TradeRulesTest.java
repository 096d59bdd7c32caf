package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rules of the trade that nobody could point to a source for. None of them is a limit of the
 * program; the demo plan's own limits and the demo book must leave room for them.
 */
final class TradeRulesTest {

  private static final String SOURCE = "common practice, no source";
  private static final Path BOOK = Path.of("demo-data", "wrenfold");

  private static JsonNode belly() throws IOException {
    String text = Files.readString(BOOK.resolve("plan.json"), StandardCharsets.UTF_8);
    for (JsonNode product : new ObjectMapper().readTree(text).path("products")) {
      if (product.path("code").asText().equals("JTB")) {
        return product;
      }
    }
    throw new AssertionError("the demo plan has no belly bacon");
  }

  private static Quantity own(String id, String field) throws IOException {
    for (JsonNode limit : belly().path("ownLimits")) {
      if (limit.path("id").asText().equals(id)) {
        return Quantity.required(limit.path(field).asText());
      }
    }
    throw new AssertionError("the demo plan has no " + id);
  }

  /** A floor of the plan must not lie above what the trade does, nor a ceiling below it. */
  @ParameterizedTest(name = "{0} ({4})")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # rule                                         | limit         | field   | value  | source
          a week of dry cure                             | own.cure-days | atLeast | 7 d    | common practice, no source
          one turn a day                                 | own.turn      | every   | 24 h   | common practice, no source
          drying overnight, read at night and in the morning | own.dry-cold | every | 14 h | common practice, no source
          two to three hours of smoke on the way to 150 °F | own.come-up | atMost  | 3 h    | common practice, no source
          to 150 °F inside                               | own.finish    | atLeast | 150 °F | common practice, no source
          """)
  void the_plan_leaves_room_for_a_rule_of_the_trade(
      String rule, String limit, String field, String value, String source) throws IOException {
    Quantity practice = Quantity.required(value);
    Quantity bound = own(limit, field);
    boolean room = field.equals("atLeast") ? !practice.isBelow(bound) : !practice.isAbove(bound);
    assertTrue(room, rule + " of " + value + " under " + field + " " + bound);
    assertEquals(SOURCE, source);
  }

  @Test
  void a_soak_of_an_hour_fits_between_cure_and_drying() throws IOException {
    Quantity between = Quantity.required(belly().path("between").asText());
    assertFalse(Quantity.required("1 h").isAbove(between), SOURCE);
  }

  /** How long each step of each belly in the demo book took. */
  @ParameterizedTest(name = "{0}: {3} to {4} ({5})")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # rule                       | from        | to            | least | most   | source
          a week of dry cure           | into cure   | out of cure   | 7 d   | 11 d   | common practice, no source
          an hour's soak               | into soak   | out of soak   | 1 h   | 1 h    | common practice, no source
          drying overnight             | into drying | out of drying | 10 h  | 26 h   | common practice, no source
          two to three hours of smoke  | into smoke  | out of smoke  | 2 h   | 3.25 h | common practice, no source
          """)
  void the_book_keeps_to_a_rule_of_the_trade(
      String rule, String from, String to, String least, String most, String source)
      throws IOException {
    for (String lot : List.of("26044-B1", "26045-B1", "26045-B2", "26047-B1")) {
      long minutes = Duration.between(time(lot, from), time(lot, to)).toMinutes();
      Quantity took = Quantity.of(minutes, Unit.MINUTE);
      assertFalse(took.isBelow(Quantity.required(least)), lot + " took " + took + " for " + rule);
      assertFalse(took.isAbove(Quantity.required(most)), lot + " took " + took + " for " + rule);
    }
    assertEquals(SOURCE, source);
  }

  @Test
  void the_smoker_is_near_200_and_the_meat_comes_to_150() throws IOException {
    double air = 0;
    double inside = 0;
    for (String line : lines(BOOK.resolve("2026-02-24").resolve("probes-a.csv"))) {
      String[] cells = line.split(",", -1);
      boolean reading = cells[0].startsWith("2026") && !cells[1].isEmpty() && !cells[2].isEmpty();
      air = reading ? Math.max(air, Double.parseDouble(cells[2])) : air;
      inside = reading ? Math.max(inside, Double.parseDouble(cells[1])) : inside;
    }
    assertEquals(200, air, 10, SOURCE);
    assertEquals(150, inside, 2, SOURCE);
  }

  private static LocalDateTime time(String lot, String what) throws IOException {
    List<LocalDateTime> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(BOOK)) {
      for (Path file : files.filter(each -> each.toString().endsWith(".csv")).toList()) {
        for (String line : lines(file)) {
          String[] cells = line.split(",", -1);
          if (cells.length > 2 && cells[0].equals(lot) && cells[2].equals(what)) {
            found.add(LocalDateTime.parse(cells[1].replace(' ', 'T')));
          }
        }
      }
    }
    assertEquals(1, found.size(), what + " of " + lot);
    return found.get(0);
  }

  /** As Latin letters: one log of the demo is not in UTF-8, and its rows are none of these. */
  private static List<String> lines(Path file) throws IOException {
    return Files.readAllLines(file, StandardCharsets.ISO_8859_1);
  }
}

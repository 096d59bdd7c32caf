package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Every number of the demo day can be followed to the lines of the files that it rests on. */
final class EvidenceTest {

  /** Clock times as well, since a time in a band rests on them. */
  private static final Pattern NUMBER = Pattern.compile("\\d\\d:\\d\\d|\\d+(?:\\.\\d+)?");

  private static final Pattern CLOCK = Pattern.compile("(\\d\\d):(\\d\\d)");

  private static final int DAY = 24 * 60;

  private static final Charset WINDOWS = Charset.forName("windows-1252");

  private static final List<JsonNode> FOUND = new ArrayList<>();

  @BeforeAll
  static void check() {
    JsonNode day = Ran.of("check", Tree.DEMO.resolve(Tree.DAY), "--json").expect(1).json();
    day.get("lots").forEach(lot -> lot.get("findings").forEach(FOUND::add));
    FOUND.removeIf(finding -> !finding.has("value"));
  }

  @Test
  void there_is_something_to_follow() {
    assertEquals(72, FOUND.size(), "findings with a value");
  }

  @Test
  void a_value_comes_with_its_formula_source_and_evidence() {
    List<String> wrong = new ArrayList<>();
    for (JsonNode finding : FOUND) {
      for (String key : List.of("unit", "limitValue", "margin", "formula", "quantity")) {
        if (finding.path(key).asText().isBlank()) {
          wrong.add(finding.get("limit") + " has no " + key);
        }
      }
      if (finding.path("evidence").isEmpty()) {
        wrong.add(finding.get("limit") + " has no evidence");
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void the_margin_is_what_lies_between_value_and_limit() {
    for (JsonNode finding : FOUND) {
      double spare = finding.get("limitValue").asDouble() - finding.get("value").asDouble();
      boolean atMost = finding.get("bound").asText().equals("<=");
      if (!finding.get("quantity").asText().contains("temperature")) {
        assertEquals(
            atMost ? spare : -spare,
            finding.get("margin").asDouble(),
            0.000_002,
            finding.toString());
      }
    }
  }

  @Test
  void every_line_of_evidence_is_there() throws Exception {
    for (JsonNode finding : FOUND) {
      for (JsonNode place : finding.get("evidence")) {
        assertTrue(!line(place).isBlank(), finding.get("limit") + " rests on " + place);
      }
    }
  }

  /** Where the formula is about a time alone, the lines must lie that far apart. */
  @Test
  void a_line_of_evidence_bears_a_number_of_the_formula() throws Exception {
    List<String> wrong = new ArrayList<>();
    for (JsonNode finding : FOUND) {
      Set<String> borne = new HashSet<>();
      for (JsonNode place : finding.get("evidence")) {
        borne.addAll(numbers(line(place)));
      }
      borne.retainAll(numbers(finding.get("formula").asText()));
      if (borne.isEmpty() && finding.get("value").asDouble() != 0 && !isApart(finding)) {
        wrong.add(finding.get("limit") + ": " + finding.get("formula") + finding.get("evidence"));
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** To the minute at either end, and over midnight. */
  private static boolean isApart(JsonNode finding) throws Exception {
    double minutes = finding.get("unit").asText().equals("h") ? 60 : 1;
    double value = finding.get("value").asDouble() * minutes % DAY;
    JsonNode places = finding.get("evidence");
    int from = clock(line(places.get(0)));
    int to = clock(line(places.get(places.size() - 1)));
    return List.of("min", "h").contains(finding.get("unit").asText())
        && Math.abs((to - from + DAY) % DAY - value) <= 2;
  }

  private static int clock(String line) {
    Matcher time = CLOCK.matcher(line);
    assertTrue(time.find(), line);
    return Integer.parseInt(time.group(1)) * 60 + Integer.parseInt(time.group(2));
  }

  private static String line(JsonNode place) throws Exception {
    Path file = Tree.DEMO.resolve(place.get("file").asText());
    String text = new String(Files.readAllBytes(file), WINDOWS);
    List<String> lines = text.lines().toList();
    int line = place.get("line").asInt();
    assertTrue(line >= 1 && line <= lines.size(), place.toString());
    return lines.get(line - 1);
  }

  private static Set<String> numbers(String text) {
    Set<String> numbers = new HashSet<>();
    boolean commaIsDecimal = text.contains(";");
    Matcher matcher = NUMBER.matcher(commaIsDecimal ? text.replace(',', '.') : text);
    while (matcher.find()) {
      String number = matcher.group();
      numbers.add(number.replaceFirst("\\.0$", ""));
      if (commaIsDecimal && number.contains(".")) {
        numbers.add(fahrenheit(number));
      }
    }
    return numbers;
  }

  /** The log with decimal commas is in °C, the plan in °F. */
  private static String fahrenheit(String celsius) {
    BigDecimal ninths = new BigDecimal(celsius).multiply(BigDecimal.valueOf(1.8));
    return ninths.add(BigDecimal.valueOf(32)).setScale(1, RoundingMode.HALF_EVEN).toString();
  }
}

package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Limits are data: where plans are read and lots are judged, no number of a limit stands in Java.
 */
final class NoLimitInJavaTest {

  private static final List<String> ROOMS = List.of("check", "lot", "plan", "doubt", "sheet");
  private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/|(?m)//.*$", Pattern.DOTALL);
  private static final Pattern LIMIT =
      Pattern.compile(
          "\\b(?!32 °F)\\d+(\\.\\d+)?\\s*(ppm|mg/kg|°F|°C)"
              + "|\\bof\\(\\s*\"?(?!100\\b.*PERCENT)[1-9]\\d*(\\.\\d+)?\"?\\s*,\\s*(Unit\\.)?"
              + "(PPM|PERCENT|FAHRENHEIT|CELSIUS|HOUR|MINUTE)\\b"
              + "|\\b\\d+\\.\\d+\\b");

  private static List<String> limits(String source) {
    Matcher found = LIMIT.matcher(COMMENT.matcher(source).replaceAll(" "));
    return found.results().map(result -> result.group().strip()).toList();
  }

  @Test
  void no_number_of_a_limit_stands_where_plans_are_read_and_lots_judged() throws IOException {
    List<String> found = new ArrayList<>();
    int files = 0;
    for (String room : ROOMS) {
      Path folder = Path.of("src", "main", "java", "org", "flitchbook", room);
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path file : all.filter(each -> each.toString().endsWith(".java")).sorted().toList()) {
          files++;
          limits(Draft.text(file)).forEach(limit -> found.add(file.getFileName() + ": " + limit));
        }
      }
    }
    assertEquals(List.of(), found);
    assertEquals(true, files > 40, files + " files");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Quantity.required(\"200 ppm\")",
        "if (level > of(130, Unit.FAHRENHEIT)) {",
        "Quantity.of( 90, MINUTE)",
        "double top = 54.4;",
        "fault(\"more than 41 °F\")"
      })
  void a_number_of_a_limit_would_be_found(String source) {
    assertEquals(1, limits(source).size());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Quantity.of(100, Unit.PERCENT)",
        "Quantity.of(0, Unit.SECOND)",
        "/* 130 °F */ int size = 256;",
        "// 200 ppm\n",
        "\"32 °F\", where ice melts",
        "\"a date such as 2026-01-05\""
      })
  void other_numbers_are_let_pass(String source) {
    assertEquals(List.of(), limits(source));
  }
}

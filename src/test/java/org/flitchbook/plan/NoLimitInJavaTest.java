package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Limits are data, and so is every other number that decides: where plans are read, readings taken
 * and lots judged, none stands in Java.
 */
final class NoLimitInJavaTest {

  private static final List<String> ROOMS =
      List.of("check", "lot", "plan", "doubt", "sheet", "reading", "sums", "practice");

  private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/|(?m)//.*$", Pattern.DOTALL);
  private static final Pattern TEXT = Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"");

  private static final Pattern LIMIT =
      Pattern.compile(
          "\\b(?!32 °F)\\d+(\\.\\d+)?\\s*(ppm|mg/kg|°F|°C)"
              + "|\\bof\\(\\s*\"?(?!100\\b.*PERCENT)[1-9]\\d*(\\.\\d+)?\"?\\s*,\\s*(Unit\\.)?"
              + "(PPM|PERCENT|FAHRENHEIT|CELSIUS|HOUR|MINUTE)\\b"
              + "|\\b(?!60_000\\.0)[\\d_]+\\.\\d+\\b");

  /**
   * Milliseconds and other long numbers, lengths of time, ratios, constants, and what is
   * multiplied, divided or compared by; not 60, 1000 and 60_000, which turn a unit of time into
   * another.
   */
  private static final Pattern DECIDES =
      Pattern.compile(
          "\\b(?!60_000\\b)[1-9]\\d{0,2}(?:_\\d{3})+L?\\b"
              + "|\\b(?!1000L?\\b)[1-9]\\d{3,}L?\\b"
              + "|\\b(?:Duration\\.of|plus|minus)\\w+\\(\\s*(?:[2-9]|[1-9]\\d+)L?\\s*\\)"
              + "|\\bRatio\\.of\\(\\s*[1-9]\\d*L?\\s*,\\s*[1-9]\\d*L?\\s*\\)"
              + "|\\bRatio\\.of\\(\\s*(?!10{2,3}L?\\b)(?:[2-9]|[1-9]\\d+)L?\\s*\\)"
              + "|[*]\\s*(?!(?:60|1000)L?\\b)(?:[2-9]|[1-9]\\d+)L?\\b(?!_)"
              + "|[/<>]=?\\s*(?!1000L?\\b)(?:[3-9]|[1-9]\\d+)L?\\b(?!_)"
              + "|(?<![\\d_])(?:[2-9]|[1-9]\\d+)L?\\s*[*]"
              + "|\\bstatic final (?:int|long) \\w+ = (?:[2-9]|[1-9]\\d+)L?\\b(?!_)");

  /** What is found and yet decides nothing that a person could decide otherwise, each with why. */
  private static final List<String> EXCEPTIONS =
      """
      check/TimeAtTemperatureJudge.java: Ratio.of(2) | how near a row without a time is: more than held
      doubt/CoreAirRule.java: 2 * | between the rule's number and twice it nothing is sure
      doubt/HandRule.java: 2 * | less than half as far is nearer by far
      doubt/Leaps.java: 2 * | more than half of a leap is most of it
      doubt/ExcludingRule.java: 2 * | more than half of the way is most of it
      reading/Chosen.java: * 2 | how fast a list grows
      reading/CountedClock.java: 2000 | before and after this century a number counts something else
      reading/CountedClock.java: 2100 | before and after this century a number counts something else
      reading/Numbers.java: <= 4 | as many digits as a temperature has; only a hint depends on it
      reading/LogRows.java: 1_000_000 | the levels to a thousandth of a degree
      reading/Longs.java: static final int BITS = 12 | the size of a block in memory
      reading/Numbers.java: static final int LONGEST = 24 | as many digits as any number has
      reading/Numbers.java: static final int LONGEST_LOGGED = 60 | no program writes a number with more letters
      reading/LogCell.java: static final int USUAL = 9 | the letters of a plain number, for speed
      reading/Samples.java: 50_000 | of more steps than that only as many are looked at, for speed
      reading/SheetReader.java: 100_000 | a longer cell was made to hurt; the file is refused, and no row is judged
      reading/SheetReader.java: 5_000 | more rows were made to hurt; the file is refused, and no row is judged
      reading/WrittenClock.java: 2026 | any time shows what a pattern writes
      sums/Boiling.java: a table | where water boils, a published table
      sums/Lethality.java: static final int HOTTEST = 200 | so that a broken probe stays a number
      sums/Molar.java: a table | the atomic weights of the IUPAC
      sums/Sums.java: Ratio.of(198, 216) | molecular weights as 9 CFR 424.22(b)(1) has them
      sums/Sums.java: Ratio.of(3) | a rectangular distribution after the GUM
      sums/Weighed.java: Ratio.of(2) | half a step, where a scale's scatter is not known
      sums/Weighed.java: Ratio.of(6) | two roundings to a step after the GUM
      """
          .lines()
          .toList();

  private static List<String> numbers(String source) {
    String code = COMMENT.matcher(source).replaceAll(" ");
    List<String> all = new ArrayList<>(found(LIMIT, code));
    all.addAll(found(DECIDES, TEXT.matcher(code).replaceAll("\"\"").replaceAll("\\s+", " ")));
    return all;
  }

  private static List<String> found(Pattern pattern, String code) {
    Matcher found = pattern.matcher(code);
    return found.results().map(result -> result.group().strip()).toList();
  }

  @Test
  void no_number_that_decides_stands_where_plans_are_read_and_lots_judged() throws IOException {
    Set<String> found = new TreeSet<>();
    int files = 0;
    for (String room : ROOMS) {
      Path folder = Path.of("src", "main", "java", "org", "flitchbook", room);
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path file : all.filter(each -> each.toString().endsWith(".java")).sorted().toList()) {
          files++;
          String name = room + "/" + file.getFileName() + ": ";
          numbers(Draft.text(file)).forEach(each -> found.add(name + each));
        }
      }
    }
    Set<String> tables =
        found.stream().filter(NoLimitInJavaTest::isOfTable).collect(Collectors.toSet());
    found.removeAll(tables);
    tables.forEach(each -> found.add(each.replaceFirst(": .*", ": a table")));
    Set<String> named =
        EXCEPTIONS.stream().map(each -> each.split(" \\| ", 2)[0]).collect(Collectors.toSet());
    assertEquals(new TreeSet<>(named), found);
    assertEquals(true, files > 60, files + " files");
  }

  private static boolean isOfTable(String found) {
    return found.matches("sums/(Boiling|Molar)\\.java: .*");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Quantity.required(\"200 ppm\")",
        "if (level > of(130, Unit.FAHRENHEIT)) {",
        "Quantity.of( 90, MINUTE)",
        "double top = 54.4;",
        "fault(\"more than 41 °F\")",
        "Math.max(interval, 300_000L)",
        "long near = 5400000;",
        "Duration.ofMinutes(15)",
        "date.plusDays(2)",
        "3 * interval()",
        "interval() * 3",
        "usual / 10",
        "Ratio.of(1, 10)",
        "back > 50L",
        "private static final int FEWEST = 4;",
        "private static final long JITTER = 2_000;"
      })
  void a_number_that_decides_would_be_found(String source) {
    assertEquals(1, numbers(source).size(), numbers(source).toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Quantity.of(100, Unit.PERCENT)",
        "Quantity.of(0, Unit.SECOND)",
        "/* 130 °F */ int size = 256;",
        "// 200 ppm\n",
        "\"32 °F\", where ice melts",
        "\"a date such as 2026-01-05\"",
        "minutes * 60 + seconds",
        "millis / 60_000.0",
        "Ratio.of(1000)",
        "date.plusDays(1)",
        "Duration.ofMinutes(1)",
        "steps[steps.length / 2]",
        "weights.size() < 2",
        "say(\"reading.order\", \"{0} of 2000\")"
      })
  void other_numbers_are_let_pass(String source) {
    assertEquals(List.of(), numbers(source));
  }
}

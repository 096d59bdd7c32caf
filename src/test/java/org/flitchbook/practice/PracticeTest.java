package org.flitchbook.practice;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The numbers of common practice are data, and what decides by them follows the data. */
final class PracticeTest {

  private static final String TEXT = new String(ToolPractice.file().bytes(), UTF_8);

  private static List<String> faults(String text) {
    SourceFile file = SourceFile.of(Practice.FILE, text.getBytes(UTF_8));
    Binder.Bound<Practice> read = Practice.read(List.of(file));
    assertTrue(read.value().isPresent() || !read.faults().isEmpty());
    return read.faults().stream().map(Fault::toString).toList();
  }

  @Test
  void the_numbers_of_the_tool_are_these() {
    Practice practice = ToolPractice.get();
    assertEquals(new Practice.Gap(3, Duration.ofMinutes(5), 5), practice.gap());
    assertEquals(
        new Practice.SteadyClock(4, Duration.ofSeconds(2), Ratio.of(1, 10)),
        practice.steadyClock());
    assertEquals(
        new Practice.SetBack(
            Duration.ofMinutes(50),
            Duration.ofMinutes(70),
            Duration.ofHours(11),
            Duration.ofHours(13)),
        practice.setBack());
    assertEquals(1, practice.daysAhead());
    assertEquals(Ratio.of(1, 10), practice.nearMiss());
    assertEquals(Duration.ofMinutes(5), practice.airBeside());
    assertEquals(
        Optional.of(new Practice.Handover(Duration.ofMinutes(15), Duration.ofMinutes(15))),
        practice.handover());
    assertEquals(
        new Practice.Teaspoon(Quantity.required("4.2 g"), Quantity.required("7.1 g")),
        practice.teaspoon());
  }

  /** The longer of 3 intervals and 5 minutes is no gap yet. */
  @ParameterizedTest
  @CsvSource({"0, 300_000", "60_000, 300_000", "100_000, 300_000", "100_001, 300_003"})
  void a_gap_is_longer_than_so_many_intervals_and_that_time(String interval, String longest) {
    Practice.Gap gap = ToolPractice.get().gap();
    assertEquals(number(longest), gap.longestStep(number(interval)));
    assertEquals(100_000, gap.shortInterval());
  }

  /** The longest of 2 s and a tenth, rounded down. */
  @ParameterizedTest
  @CsvSource({"0, 2_000", "20_000, 2_000", "20_010, 2_001", "20_019, 2_001", "60_000, 6_000"})
  void a_usual_step_may_be_off_by_so_much(String usual, String off) {
    assertEquals(number(off), ToolPractice.get().steadyClock().tolerance(number(usual)));
  }

  @ParameterizedTest
  @CsvSource({
    "50, false, false",
    "51, true, false",
    "69, true, false",
    "70, false, false",
    "660, false, false",
    "661, false, true",
    "779, false, true",
    "780, false, false"
  })
  void a_clock_that_goes_back_may_be_one_of_two_things(int minutes, boolean hour, boolean half) {
    long millis = Duration.ofMinutes(minutes).toMillis();
    assertEquals(hour, ToolPractice.get().setBack().isHour(millis));
    assertEquals(half, ToolPractice.get().setBack().isHalfDay(millis));
  }

  private static long number(String text) {
    return Long.parseLong(text.replace("_", ""));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "5 min"             | "5 ppm"         | found "5 ppm", expected a length of time above 0
          "5 min"             | "0 min"         | found "0 min", expected a length of time above 0
          "intervals": "3"    | "intervals": "2.5" | found "2.5", expected a whole number above 0
          "intervals": "3", " | "               | no "intervals", expected a whole number above 0
          "below": "10 %"     | "below": "10 %", "of": "1 %" | the key "of", expected one of below, why, source
          """)
  void what_is_wrong_with_the_file_is_said(String found, String changed, String said) {
    assertTrue(TEXT.contains(found), found);
    List<String> faults = faults(TEXT.replace(found, changed));
    assertEquals(1, faults.size(), faults.toString());
    assertTrue(faults.get(0).contains(said), faults.toString());
  }

  @Test
  void without_the_file_nothing_is_judged() {
    Binder.Bound<Practice> read = Practice.read(List.of());
    assertFalse(read.value().isPresent());
    assertEquals(
        List.of(
            "templates/practice.json: found no such file, expected the numbers of common practice"),
        read.faults().stream().map(Fault::toString).toList());
    assertEquals(List.of(), faults(TEXT));
    assertEquals(1, faults("{").size());
  }
}

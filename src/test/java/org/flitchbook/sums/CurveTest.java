package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a log was silent, and which readings by hand stand by themselves. */
final class CurveTest {

  /** A reading each minute; a gap as {@code from-to (by hand)}. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                                  | readings                                | gaps
          none                                    | 0:40 1:40 2:40                          | ''
          five minutes are none                   | 0:40 5:40 10:40                         | ''
          one                                     | 0:40 1:40 8:40                          | 1-2 (0)
          one that was bridged by hand            | 0:40 7:40 h8:40 h9:40 20:40             | 0-1 (0), 1-4 (2)
          two                                     | 0:40 10:40 11:40 30:40                  | 0-1 (0), 2-3 (0)
          a reading by hand after the log is none | 0:40 1:40 h20:40                        | ''
          a reading by hand before it is none     | h0:40 20:40 21:40                       | ''
          of readings by hand alone there is none | h0:40 h20:40 h50:40                     | ''
          """)
  void a_gap_is_one_of_the_log(String fact, String readings, String gaps) {
    int interval = readings.startsWith("h0:40 h") ? 0 : 1;
    Line line = Line.every(interval, readings);
    assertEquals(
        gaps,
        line.gaps().stream()
            .map(gap -> gap.from() + "-" + gap.to() + " (" + gap.byHand() + ")")
            .collect(Collectors.joining(", ")));
  }

  /** The indices of those that may count for the product. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # fact                          | readings               | standing
          the log does                    | 0:40 1:40 2:40         | 0 1 2
          beside a live log it does not   | 0:40 h1:40 2:40        | 0 2
          in a gap it does                | 0:40 h3:40 9:40        | 0 1 2
          before the log it does          | h0:40 1:40 2:40        | 0 1 2
          behind the log it does          | 0:40 1:40 h2:40        | 0 1 2
          where there is no log they do   | h0:40 h1:40 h2:40      | 0 1 2
          """)
  void a_reading_by_hand_stands_where_the_log_is_silent(
      String fact, String readings, String standing) {
    Line line = Line.every(readings.startsWith("h0:40 h") ? 0 : 1, readings);
    assertEquals(
        standing,
        IntStream.range(0, line.size())
            .filter(line::stands)
            .mapToObj(String::valueOf)
            .collect(Collectors.joining(" ")));
  }
}

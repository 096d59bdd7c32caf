package org.flitchbook.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which names a pattern of {@code logs.json} fits, and how long that takes. */
final class FilePatternTest {

  @ParameterizedTest(name = "[{0}] [{1}]")
  @CsvSource({
    "probes.csv, probes.csv, true",
    "probes.csv, probes.csv2, false",
    "probes.csv, probesxcsv, false",
    "probes*.csv, probes.csv, true",
    "probes*.csv, probes-a.csv, true",
    "probes*.csv, probes-a.csv.csv, true",
    "probes*.csv, probes-a.txt, false",
    "*, anything, true",
    "**, a, true",
    "?*, '', false",
    "'', '', true",
    "'', a, false",
    "*, '', true",
    "a?c, abc, true",
    "a?c, ac, false",
    "*a*b, xaxbxb, true",
    "*a*b, xaxbx, false",
    "*ab?, xabab1, true",
    "[ab].csv, a.csv, false",
    "\\E.*, \\E.csv, true",
  })
  void a_name_fits(String pattern, String name, boolean fits) {
    assertEquals(fits, new FilePattern(pattern).fits(name));
  }

  @Test
  void many_stars_and_a_long_pattern_take_no_time() {
    String name = "a".repeat(255);
    assertTimeoutPreemptively(
        Duration.ofSeconds(2),
        () -> {
          assertEquals(false, new FilePattern("*a".repeat(24) + "x").fits(name));
          assertEquals(false, new FilePattern("*".repeat(24) + "x").fits(name));
          assertEquals(false, new FilePattern("*a?".repeat(30_000) + "x").fits(name));
        });
  }
}

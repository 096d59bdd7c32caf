package org.flitchbook.reading;

import static org.flitchbook.reading.Days.said;
import static org.flitchbook.reading.Days.samples;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The ways in which loggers write times out, each by the pattern that reads it. */
final class PatternsTest {

  private static Day read(String pattern, String... times) {
    StringBuilder log = new StringBuilder("Time;P1\n");
    Stream.of(times).forEach(time -> log.append(time).append(";39\n"));
    return Days.log(
        "\"pattern\": \"" + pattern + "\", \"zone\": \"America/New_York\"", log.toString());
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '"',
      textBlock =
          """
          yyyy-MM-dd HH:mm:ss 'UTC'        | 2026-02-24 13:02:03 UTC           | 13:02:03Z
          yyyy-MM-dd HH:mm:ss 'GMT'        | 2026-02-24 13:02:03 GMT           | 13:02:03Z
          yyyy-MM-dd HH:mm:ss'Z'           | 2026-02-24 13:02:03Z              | 13:02:03Z
          yyyy-MM-dd'T'HH:mm:ss'Z'         | 2026-02-24T13:02:03Z              | 13:02:03Z
          yyyy-MM-dd'T'HH:mm:ssX           | 2026-02-24T13:02:03Z              | 13:02:03Z
          yyyy-MM-dd HH:mm:ss Z 'UTC'      | 2026-02-24 13:02:03 +0000 UTC     | 13:02:03Z
          yyyy-MM-dd HH:mm:ss 'GMT'XXX     | 2026-02-24 14:02:03 GMT+01:00     | 13:02:03Z
          yyyy-MM-dd HH:mm:ss O            | 2026-02-24 14:02:03 GMT+1         | 13:02:03Z
          HH:mm:ss MM/dd/yy                | 08:02:03 02/24/26                 | 13:02:03Z
          H:m:s M/d/yy                     | 8:2:3 2/24/26                     | 13:02:03Z
          d.M.yyyy H:m                     | 24.2.2026 8:2                     | 13:02:00Z
          yyyy-MM-dd HH:mm:ss.SSS          | 2026-02-24 08:02:03.5             | 13:02:03.500Z
          yyyy-MM-dd HH:mm:ss,SSS          | 2026-02-24 08:02:03,25            | 13:02:03.250Z
          yyyyMMddHHmmssSSS                | 20260224080203250                 | 13:02:03.250Z
          d MMM yyyy HH:mm:ss              | 24 Feb 2026 08:02:03              | 13:02:03Z
          d MMM yyyy HH:mm:ss              | 24 FEB 2026 08:02:03              | 13:02:03Z
          d. MMM yyyy HH:mm:ss             | 24. Febr. 2026 08:02:03           | 13:02:03Z
          d MMM yyyy HH:mm:ss              | 24 févr. 2026 08:02:03            | 13:02:03Z
          d MMMM yyyy HH:mm:ss             | 24 February 2026 08:02:03         | 13:02:03Z
          d. MMMM yyyy HH:mm:ss            | 24. Februar 2026 08:02:03         | 13:02:03Z
          d 'de' MMMM 'de' yyyy HH:mm:ss   | 24 de febrero de 2026 08:02:03    | 13:02:03Z
          MMM d, yyyy h:mm:ss a            | Feb 24, 2026 8:02:03 am           | 13:02:03Z
          M/d/yyyy h:mm:ss a               | 2/24/2026 8:02:03 a.m.            | 13:02:03Z
          M/d/yyyy h:mm:ss a               | 2/24/2026 8:02:03 a. m.           | 13:02:03Z
          EEE MMM d HH:mm:ss yyyy          | Tue Feb 24 08:02:03 2026          | 13:02:03Z
          """)
  void a_time_is_read_by_its_pattern(String pattern, String text, String time) {
    Day day = read(pattern, text);
    assertEquals(List.of(), said(day));
    assertEquals(List.of("2: 2026-02-24T" + time + " 39 °F"), samples(day.series().get(0)));
  }

  @ParameterizedTest
  @CsvSource({
    "Jan, 1", "enero, 1", "gennaio, 1", "Fév, 2", "mars, 3", "Mrz, 3", "März, 3", "mrt, 3",
    "maart, 3", "abr, 4", "avril, 4", "Mai, 5", "mei, 5", "maggio, 5", "juin, 6", "giugno, 6",
    "juil., 7", "luglio, 7", "août, 8", "ago, 8", "Sept, 9", "set, 9", "Okt, 10", "out, 10",
    "ottobre, 10", "noviembre, 11", "Dez, 12", "dic, 12", "déc., 12"
  })
  void a_month_may_be_written_in_another_language(String word, int month) {
    Day day = read("d MMM yyyy HH:mm'Z'", "3 " + word + " 2026 08:02Z");
    assertEquals(
        List.of("2: 2026-%02d-03T08:02:00Z 39 °F".formatted(month)), samples(day.series().get(0)));
  }

  @Test
  void a_fraction_may_come_and_go() {
    Day day =
        read(
            "yyyy-MM-dd'T'HH:mm:ss[.SSS]XXX",
            "2026-02-24T08:02:03-05:00",
            "2026-02-24T08:02:04.5-05:00",
            "2026-02-24T08:02:05.123456-05:00",
            "2026-02-24T13:02:06Z");
    assertEquals(List.of(), said(day));
    assertEquals(
        List.of(
            "2: 2026-02-24T13:02:03Z 39 °F",
            "3: 2026-02-24T13:02:04.500Z 39 °F",
            "4: 2026-02-24T13:02:05.123Z 39 °F",
            "5: 2026-02-24T13:02:06Z 39 °F"),
        samples(day.series().get(0)));
    assertEquals(0, day.series().get(0).precisionMillis());
  }

  @ParameterizedTest
  @CsvSource({"HH:mm[:ss], 60000", "HH:mm[:ss[.SSS]], 60000", "HH:mm:ss[.SSS], 0", "HH:mm, 60000"})
  void seconds_that_may_be_missing_make_a_log_to_the_minute(String clock, long precision) {
    assertEquals(
        precision,
        read("yyyy-MM-dd " + clock, "2026-02-24 08:02" + (precision == 0 ? ":03" : ""))
            .series()
            .get(0)
            .precisionMillis());
  }

  @ParameterizedTest
  @CsvSource({"'yyyy-MM-dd HH:mm ''UTC'", "'yyyy-MM-dd HH:mm] UTC'", "yyyy-MM-dd HH:mm z"})
  void what_is_no_pattern_is_refused(String pattern) {
    assertEquals(
        1, said(read(pattern)).stream().filter(said -> said.contains("time.pattern")).count());
  }

  @Test
  void words_in_quotes_stay_as_they_are() {
    Day day = read("'o''clock' yyyy-MM-dd HH:mm:ss", "o'clock 2026-02-24 08:02:03");
    assertEquals(List.of("2: 2026-02-24T13:02:03Z 39 °F"), samples(day.series().get(0)));
  }
}

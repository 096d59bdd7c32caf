package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Facts that no limit looks at: each asked about, and its honest neighbour quiet. */
final class UnusedFactsTest {

  /** What is asked of a lot that was cured cold, beside what is asked of its first rows. */
  private static String asked(Bench bench) {
    Set<String> asked =
        bench.doubts().stream().filter(Fault::isOpen).map(Fault::rule).collect(Collectors.toSet());
    return String.join(", ", new TreeSet<>(asked));
  }

  private static Bench cold(String rows) {
    Bench bench = Suspects.cold("38.0", "38.4").write("cure,2026-02-10 08:00,green weight,,4812,g");
    return rows.isEmpty() ? bench : bench.write(rows.split(" ; ", -1));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "                     | cure,2026-02-10 08:40,surfaces covered,,all",
        "                     | cure,2026-02-10 08:40,surfaces covered,,Both faces and the edges",
        "surfaces not covered | cure,2026-02-10 08:40,surfaces covered,,none",
        "surfaces not covered | cure,2026-02-10 08:40,surfaces covered,,all but the rind",
        "surfaces not covered | cure,2026-02-10 08:40,surfaces covered,,top",
      })
  void surfaces_are_covered_all_over(String rule, String row) {
    assertEquals(rule == null ? "" : rule, asked(cold(row)));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "                  | packed,box 1,4120,g",
        "more than there is | packed,box 1,4121,g",
        "                  | packed,box 1,2000,g ; ends,,2120,g",
        "more than there is | packed,box 1,2000,g ; ends,,2121,g",
        "more than there is | packed,box 1,2000,g ; waste,,2121,g",
        "more than there is | packed,box 1,2000,g ; sample,,2121,g",
        "                  | dispatched,Fen Larder,2000,g ; dispatched,Fen Larder,2000,g",
        "more than there is | dispatched,Fen Larder,2100,g ; dispatched,Fen Larder,2100,g",
        "more than there is | destroyed,,2100,g ; dispatched,Fen Larder,2100,g",
        "                  | dispatched,Fen Larder,3000,g ; returned,Fen Larder,2000,g ;"
            + " dispatched,Moor Deli,2500,g",
        "more than there is | dispatched,Fen Larder,1000,g ; returned,Fen Larder,1001,g",
        "                  | dispatched,Fen Larder,1000,g ; returned,Fen Larder,1000,g",
        "more than there is | returned,Fen Larder,1,g",
        "more than there is | returned,Fen Larder",
        "more than there is | returned,Fen Larder ; dispatched,Fen Larder,900,g",
        "                  | dispatched,Fen Larder,900,g ; returned,Fen Larder",
        "                  | dispatched,Fen Larder ; returned,Fen Larder,900,g",
      })
  void no_more_leaves_than_there_is(String rule, String rows) {
    Bench bench = cold("chill,2026-02-13 08:00,weight,,4000,g,MA,S-10");
    int minute = 10;
    for (String row : rows.split(" ; ", -1)) {
      bench.write(
          "dispatch,2026-02-14 08:" + minute++ + "," + row + (row.endsWith("g") ? ",MA,S-10" : ""));
    }
    assertEquals(rule == null ? "" : rule, asked(bench.only(Set.of("more than there is"))));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "                 | cure,2026-02-10 12:00,turned,,,,MA,,,,a ; cure,2026-02-10"
            + " 12:01,turned,,,,MA,,,,b",
        "piece named once | cure,2026-02-10 12:00,turned,,,,MA,,,,a ; cure,2026-02-10 12:01,turned",
        "                 | cure,2026-02-10 12:00,turned,,,,MA,,,,a ; cure,2026-02-10"
            + " 15:01,turned,,,,MA,,,,a",
      })
  void a_piece_is_named_by_more_than_one_row(String rule, String rows) {
    assertEquals(rule == null ? "" : rule, asked(cold(rows)));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "             | surface,,wet ; surface,,tacky ; out of drying",
        "surface not tacky | surface,,tacky ; surface,,wet ; out of drying",
        "             | surface,,wet",
      })
  void the_surface_is_tacky_when_the_drying_ends(String rule, String rows) {
    Bench bench = cold("dry,2026-02-11 08:00,into drying,F2");
    int minute = 10;
    for (String row : rows.split(" ; ", -1)) {
      bench.write("dry,2026-02-12 08:" + minute++ + "," + row);
    }
    assertEquals(rule == null ? "" : rule, asked(bench));
  }

  /** Beside an air of 180 °F in SM, from 08:00 to 11:00; the door was open at 09:30. */
  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "  | smoke,10:00,chamber temperature,SM,120,°F",
        "  | smoke,10:00,chamber temperature,SM,240,°F",
        "chamber by hand and log disagree | smoke,10:00,chamber temperature,SM,119.9,°F",
        "chamber by hand and log disagree | smoke,10:00,chamber temperature,SM,240.1,°F",
        "  | smoke,09:34,chamber temperature,SM,110,°F",
        "  | smoke,10:00,wet-bulb temperature,SM,182,°F",
        "wet bulb warmer than its air | smoke,10:00,wet-bulb temperature,SM,182.1,°F",
        "  | smoke,11:30,wet-bulb temperature,SM,182.1,°F",
      })
  void the_chamber_agrees_with_itself(String rule, String row) {
    Bench bench =
        cold("smoke,08:00,into smoke,SM")
            .log(
                "Air",
                "chamber temperature",
                "°F",
                "LG-A",
                "\"place\": \"SM\"",
                "08:00..09:29/60 180; 09:30..09:31/60 100; 09:32..11:00/60 180")
            .write(row, "smoke,11:40,out of smoke");
    assertEquals(rule == null ? "" : rule, asked(bench));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "                           | 2026-02-10 12:00",
        "                           | 2026-02-10 12:30",
        "entered before it happened | 2026-02-10 11:59",
      })
  void an_entry_is_typed_after_it_happened(String rule, String entered) {
    assertEquals(
        rule == null ? "" : rule,
        asked(cold("cure,2026-02-10 12:00,turned,,,,MA,,,,,," + entered)));
  }

  /** Of a reading of a place that stands under no lot too. */
  @ParameterizedTest
  @CsvSource({
    "2026-02-10 09:59, entered before it happened",
    "2026-02-13 10:00, entered days later"
  })
  void a_row_of_a_place_is_typed_in_time_too(String entered, String rule) {
    Bench bench =
        cold("")
            .writeOf(
                "", "cure,2026-02-10 10:00,cooler temperature,F1,38.0,°F,MA,HT-0,,,,," + entered);
    assertEquals(rule, asked(bench));
  }

  @ParameterizedTest(name = "{1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "                                   | juniper",
        "                                   | celery seed",
        "curing salt under another word     | E250",
        "curing salt under another word     | E 252",
        "curing salt under another word     | Natriumnitrit",
        "curing salt under another word     | NaNO2",
        "curing salt under another word     | KNO3 pure",
        "curing salt under another word     | celery powder",
      })
  void what_holds_nitrite_is_known_by_many_names(String rule, String item) {
    assertEquals(
        rule == null ? "" : rule, asked(cold("cure,2026-02-10 08:12,other," + item + ",10,g")));
  }

  @ParameterizedTest(name = "{1}, {2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "                          | \"signedBy\": \"MA\" | \"signedBy\": \"MA\"",
        "plan signed by nobody known | \"signedBy\": \"MA\" | \"signedBy\": \"AM\"",
        "                          | 2027-01-05 | 2026-02-01",
        "plan not reassessed       | 2027-01-05 | 2026-01-31",
        "                          | \"tolerance\": \"2 °F\" | \"tolerance\": \"5 °F\"",
        "instrument hardly checked | \"tolerance\": \"2 °F\" | \"tolerance\": \"5.1 °F\"",
        "                          | \"tolerance\": \"0.02 g\" | \"tolerance\": \"0.1 g\"",
        "instrument hardly checked | \"tolerance\": \"0.02 g\" | \"tolerance\": \"0.11 g\"",
        "instrument hardly checked | \"checkEvery\": \"400 d\" | \"checkEvery\": \"401 d\"",
      })
  void the_plan_holds_what_it_says_of_itself(String rule, String text, String now) {
    assertEquals(rule == null ? "" : rule, asked(cold("").planned(text, now)));
  }

  @ParameterizedTest
  @CsvSource({"4 h, ''", "241 min, long time between steps"})
  void no_long_time_lies_between_steps(String between, String rule) {
    assertEquals(rule, asked(cold("").product("between", "\"" + between + "\"")));
  }

  /** What is to be done every so often counts while the step runs, and is asked about elsewhere. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "cure,2026-02-10 12:00,turned | met | ",
        "cure,2026-02-10 12:00,turned ; cure,2026-02-11 12:00,turned | met | row not used",
        "cure,2026-02-10 12:00,turned ; cure,2026-02-10 07:00,turned | met | row not used",
        "cure,2026-02-11 12:00,turned | not shown | row not used",
      })
  void turned_outside_the_cure_is_not_turned(String rows, String verdict, String rule) {
    Bench bench = cold(rows).own("turn", "cure", Suspects.TURN);
    assertEquals(verdict, Bench.found(bench.judge(), "turn").verdict().words());
    assertEquals(rule == null ? "" : rule, asked(bench));
  }
}

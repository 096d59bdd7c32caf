package org.flitchbook.doubt;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.flitchbook.check.Bench;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Extra cure for one piece of a lot that was weighed as a whole looks like little. */
final class UnweighedPieceTest {

  private static final String NITRITE = "us.424.22-b-3.nitrite";

  @ParameterizedTest(name = "weighed {0}, {1} for {2}: asked {3}, {4}")
  @CsvSource(
      delimiter = '|',
      value = {
        "''  | curing salt,C1 | b  | true  | not shown",
        "''  | accelerator,E  | b  | true  | met",
        "''  | salt,          | b  | true  | met",
        "''  | sugar,         | b  | false | met",
        "''  | curing salt,C1 | '' | false | met",
        "b   | curing salt,C1 | b  | false | met",
        "a   | curing salt,C1 | b  | true  | not shown",
      })
  void a_piece_with_its_own_cure_has_its_own_weight(
      String weighed, String cure, String piece, boolean asked, String verdict) {
    Bench bench =
        Bench.book()
            .rule(NITRITE)
            .write(
                "cure,07:00,rind,,off",
                "cure,07:01,green weight,,4800,g,MA,S-10,,," + weighed,
                "cure,07:02,curing salt,C1,9,g,MA,S-001,,," + weighed,
                "cure,07:03," + cure + ",1,g,MA,S-001,,," + piece,
                "cure,08:00:00,into cure,F1");
    assertEquals(
        asked ? 1 : 0,
        bench.doubts().stream()
            .filter(fault -> fault.rule().equals("cure for an unweighed piece"))
            .count());
    assertEquals(verdict, bench.finding(NITRITE).verdict().words());
  }
}

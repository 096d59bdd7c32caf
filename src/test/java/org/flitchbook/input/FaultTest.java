package org.flitchbook.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.flitchbook.message.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class FaultTest {

  private static final String FILE = "2026-02-24/cure.csv";
  private static final Message X = Message.of("X");
  private static final Message Y = Message.of("Y");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # line | column | printed
          12     | time   | 2026-02-24/cure.csv:12:time: found X, expected Y
          12     | ''     | 2026-02-24/cure.csv:12: found X, expected Y
          0      | ''     | 2026-02-24/cure.csv: found X, expected Y
          """)
  void a_diagnostic_reads_file_line_column_found_expected(int line, String column, String printed) {
    Place place = new Place(FILE, line, column);
    assertEquals(printed, Fault.stop("a rule", "26047-B1", place, X, Y).toString());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # severity | word   | open
          BROKEN     | broken | false
          STOP       | stop   | true
          ASK        | ask    | true
          NOTE       | note   | false
          """)
  void stop_and_ask_keep_a_lot_from_release(Severity severity, String word, boolean open) {
    Fault fault = new Fault("a rule", severity, "", Place.of(FILE), X, Y);
    assertEquals(open, fault.isOpen());
    assertEquals(word, severity.word());
    assertTrue(fault.is(severity));
  }

  @Test
  void each_severity_has_its_own_maker() {
    Place place = Place.of(FILE, 3).column("value");
    assertEquals(
        List.of(Severity.BROKEN, Severity.STOP, Severity.ASK, Severity.NOTE),
        List.of(
            Fault.broken("r", place, X, Y).severity(),
            Fault.stop("r", "L", place, X, Y).severity(),
            Fault.ask("r", "L", place, X, Y).severity(),
            Fault.note("r", "L", place, X, Y).severity()));
  }

  @Test
  void a_line_below_0_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> Place.of(FILE, -1));
  }

  /** FIPS 180-4 (NIST's example file SHA256.pdf): the digest of the three letters abc. */
  @Test
  void a_file_has_the_digest_that_the_standard_prints() {
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        SourceFile.of("a.txt", "abc".getBytes(StandardCharsets.US_ASCII)).sha256());
  }

  @Test
  void a_file_keeps_what_was_handed_in() {
    byte[] bytes = {1, 2, 3};
    SourceFile file = SourceFile.of(FILE, bytes);
    bytes[0] = 9;
    file.bytes()[1] = 9;
    assertEquals(SourceFile.of(FILE, new byte[] {1, 2, 3}), file);
    assertNotEquals(SourceFile.of(FILE, bytes), file);
    assertFalse(file.content().hasArray(), "its bytes can be written to");
  }

  @Test
  void a_file_may_be_read_over_and_over() {
    SourceFile file = SourceFile.of(FILE, new byte[] {1, 2, 3});
    assertEquals(file.sha256(), file.sha256());
    assertEquals(3, file.bytes().length);
    assertEquals(3, file.bytes().length);
  }

  @ParameterizedTest
  @CsvSource({"2026-02-24/cure.csv, cure.csv", "plan.json, plan.json", "a/b/c.csv, c.csv"})
  void the_base_name_has_no_folder(String name, String baseName) {
    assertEquals(baseName, SourceFile.of(name, new byte[0]).baseName());
  }
}

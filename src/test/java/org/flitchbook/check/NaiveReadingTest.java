package org.flitchbook.check;

import static org.flitchbook.check.Said.reasons;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Each scenario as whoever believes every row reads it, and as it is judged, in one table: {@code
 * src/test/resources/org/flitchbook/check/believed.csv}.
 */
final class NaiveReadingTest {

  private static final Path SCENARIOS = Path.of("src", "test", "scenarios");
  private static final Map<String, String> LIMITS =
      Map.of(
          "cooling", "us.b99.cooling-1",
          "nitrite", "us.424.22-b-3.nitrite",
          "finish", "own.finish",
          "turning", "own.turn",
          "cold", "own.cure-cold",
          "review", "review.before-dispatch");
  private static final Map<String, Shelf> BOOKS = new ConcurrentHashMap<>();

  private static Path folder(String book) {
    return book.equals("demo") ? Path.of("demo-data", "wrenfold") : SCENARIOS.resolve(book);
  }

  private static Judgement judged(String book, String day, String lot) {
    String end = LocalDate.parse(day).plusDays(1) + "T05:00:00Z";
    return BOOKS.computeIfAbsent(book, name -> Shelf.judged(folder(name), day, end)).lot(lot);
  }

  @ParameterizedTest(name = "{0} {2}: {3}, {4}, {5}")
  @CsvFileSource(
      resources = "/org/flitchbook/check/believed.csv",
      delimiter = '|',
      numLinesToSkip = 1)
  void a_book_is_judged_whatever_its_rows_want_to_be_believed(
      String book,
      String day,
      String lot,
      String asked,
      String believed,
      String found,
      String verdict,
      String faults,
      String told) {
    Judgement judged = judged(book, day, lot);
    Finding finding = Bench.found(judged, LIMITS.get(asked.split(" ", 2)[0]));
    assertEquals(believed, new NaiveReading(folder(book), day, lot).of(asked));
    assertEquals(found, said(finding), reasons(finding));
    assertEquals(verdict, judged.verdict().words());
    assertEquals(faults, said(judged));
    assertEquals(told, told(believed.startsWith("met"), worse(finding, judged)));
  }

  /** A lot's open questions count against it, whatever its sums say. */
  private static Verdict worse(Finding finding, Judgement judged) {
    boolean open = judged.openFaults().isEmpty() || finding.verdict() == Verdict.NOT_MET;
    return open ? finding.verdict() : Verdict.NOT_SHOWN;
  }

  private static String told(boolean believed, Verdict judged) {
    if (believed) {
      return judged.isMissed() ? "false pass" : "the same";
    }
    return judged == Verdict.NOT_MET ? "the same" : judged.isMissed() ? "no verdict" : "false miss";
  }

  private static String said(Finding finding) {
    List<String> values =
        finding.parts().isEmpty()
            ? finding.measured().stream().map(NaiveReadingTest::said).toList()
            : finding.parts().stream().map(Part::measured).map(NaiveReadingTest::said).toList();
    return (finding.verdict().words() + " " + String.join(", ", values)).strip();
  }

  private static String said(Optional<Measured> measured) {
    return measured.map(NaiveReadingTest::said).orElse("none");
  }

  private static String said(Measured measured) {
    return measured.value().value().rounded(0).toPlainString();
  }

  private static String said(Judgement judged) {
    String said =
        judged.faults().stream()
            .map(fault -> fault.severity().word() + " " + fault.rule())
            .distinct()
            .collect(Collectors.joining(", "));
    return said.isEmpty() ? "none" : said;
  }
}

package org.flitchbook.check;

import static org.flitchbook.check.Said.formulas;
import static org.flitchbook.check.Said.reasons;
import static org.flitchbook.check.Said.remarks;

import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Collectors;
import org.flitchbook.Golden;
import org.flitchbook.input.Place;
import org.flitchbook.message.Language;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every word, number and line of evidence that is said of whole books, as golden texts. */
final class WordsTest {

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "demo-data/wrenfold, 2026-02-24, 2026-02-25T05:00:00Z",
    "src/test/scenarios/s1b-still-fridge, 2026-12-31, 2027-01-01T05:00:00Z",
    "src/test/scenarios/s3-fire-out, 2026-12-31, 2027-01-01T05:00:00Z",
    "src/test/scenarios/s5a-gap-with-hand-reading, 2026-12-31, 2027-01-01T05:00:00Z",
    "src/test/scenarios/s5c-long-gap, 2026-12-31, 2027-01-01T05:00:00Z",
    "src/test/scenarios/s7b-spring, 2026-12-31, 2027-01-01T05:00:00Z",
  })
  void what_is_said_of_each_finding_of_a_book(String book, String until, String moment) {
    Path folder = Path.of(book);
    Shelf shelf = Shelf.judged(folder, until, moment);
    String said =
        shelf.lots().entrySet().stream().map(WordsTest::lot).collect(Collectors.joining("\n"));
    Golden.check("check/" + folder.getFileName() + ".txt", said);
  }

  private static String lot(Map.Entry<String, Judgement> lot) {
    return lot.getValue().findings().stream()
        .map(WordsTest::finding)
        .collect(
            Collectors.joining(
                "", lot.getKey() + ": " + lot.getValue().verdict().words() + "\n", ""));
  }

  private static String finding(Finding finding) {
    String measured = finding.measured().map(WordsTest::measured).orElse("nothing measured");
    return "  %s: %s\n    %s\n    formula: %s\n    reason: %s\n    remark: %s\n    evidence: %s\n"
        .formatted(
            finding.limit().id(),
            finding.verdict().words(),
            measured,
            formulas(finding),
            reasons(finding),
            remarks(finding),
            finding.evidence().stream().map(Place::toString).collect(Collectors.joining(", ")));
  }

  private static String measured(Measured measured) {
    return "%s: %s %s %s, margin %s%s%s"
        .formatted(
            measured.quantity().in(Language.ENGLISH),
            measured.value().shown(),
            measured.bound(),
            measured.limit().shown(),
            measured.margin().shown(),
            measured.uncertainty().map(half -> ", ± " + half.shown()).orElse(""),
            measured.interpolated().map(time -> ", interpolated " + time.shown()).orElse(""));
  }
}

package org.flitchbook.proving;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.message.Message;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A record of version 0.1.0, judged again by a later one: as it is, and with something changed. */
final class JudgedAgainTest {

  private static final Path KEPT =
      Path.of("src/test/resources/org/flitchbook/kept/0.1.0/wrenfold.zip");
  private static final String RECORD = "wrenfold/records/2026-02-24/r1/26047-B1.pdf";
  private static final String NITRITE = "us.424.22-b-3.nitrite";
  private static final String NOW = "0.3.0";

  private static EnclosedEvidence enclosed;

  @BeforeAll
  static void open() throws IOException {
    try (InputStream in = Files.newInputStream(KEPT);
        ZipInputStream zip = new ZipInputStream(in)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (entry.getName().equals(RECORD)) {
          enclosed = EnclosedEvidence.of(RECORD, zip.readAllBytes()).enclosed().orElseThrow();
          return;
        }
      }
    }
  }

  /** The same record with other text in its findings. */
  private static EnclosedEvidence with(UnaryOperator<String> edit) {
    String text =
        edit.apply(
            new String(enclosed.findings().bytes(), java.nio.charset.StandardCharsets.UTF_8));
    SourceFile findings =
        SourceFile.of(
            enclosed.findings().name(), text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    return new EnclosedEvidence(
        enclosed.name(),
        enclosed.sources(),
        findings,
        Json.read(findings.name(), findings.bytes()).object().orElseThrow());
  }

  private static List<Statement> statements(
      EnclosedEvidence record, String tool, JudgingChange... changes) {
    return JudgedAgain.of(record, tool).statements(List.of(changes));
  }

  private static JudgingChange change(String since, String... touches) {
    return new JudgingChange(
        since, Set.of(touches), Message.say("t.change", "The sum leaves out the skin."));
  }

  private static Set<Statement.Standing> standings(List<Statement> statements) {
    Map<Statement.Standing, Integer> all = new LinkedHashMap<>();
    statements.forEach(each -> all.merge(each.standing(), 1, Integer::sum));
    return all.keySet();
  }

  @Test
  void as_it_is_every_finding_is_the_same() {
    assertEquals(Set.of(Statement.Standing.PROVED), standings(statements(enclosed, NOW)));
  }

  @Test
  void a_sentence_that_was_reworded_is_not_compared() {
    EnclosedEvidence reworded = with(text -> text.replace("\"formula\" : \"", "\"formula\" : \"x"));
    assertEquals(Set.of(Statement.Standing.PROVED), standings(statements(reworded, NOW)));
  }

  @Test
  void a_verdict_that_no_change_of_judging_explains_was_changed_by_somebody() {
    EnclosedEvidence forged = with(text -> text.replace("149.366168", "141.366168"));
    List<Statement> statements = statements(forged, NOW, change("0.2.0", "us.b99.cooling-1"));
    assertEquals(Set.of(Statement.Standing.BROKEN), standings(statements));
    assertTrue(statements.get(0).toString().contains(NITRITE), statements.toString());
  }

  @Test
  void a_difference_that_a_later_change_touches_is_judged_differently() {
    EnclosedEvidence other = with(text -> text.replace("149.366168", "141.366168"));
    List<Statement> statements =
        statements(other, NOW, change("0.2.0", "us.424.22-*", "own.nitrite-floor"));
    assertEquals(Set.of(Statement.Standing.DIFFERS), standings(statements));
    String said = statements.get(0).toString();
    assertTrue(said.contains("141.366168"), said);
    assertTrue(said.contains("149.366168"), said);
    assertTrue(said.contains("What changed in version 0.2.0: The sum leaves out the skin."), said);
    assertTrue(said.contains("no sign that somebody changed the record"), said);
  }

  /** The verdict of the lot follows from that of a limit; by itself nothing explains it. */
  @Test
  void the_verdict_of_the_lot_follows_from_its_findings() {
    UnaryOperator<String> ofLot =
        text -> text.replaceFirst("\"verdict\" : \"[a-z ]+\"", "\"verdict\" : \"held\"");
    EnclosedEvidence forged = with(ofLot);
    assertEquals(
        Set.of(Statement.Standing.BROKEN),
        standings(statements(forged, NOW, change("0.2.0", NITRITE))));
    EnclosedEvidence other =
        with(text -> ofLot.apply(text).replaceFirst("149.366168", "141.366168"));
    List<Statement> statements = statements(other, NOW, change("0.2.0", NITRITE));
    assertEquals(Set.of(Statement.Standing.DIFFERS), standings(statements), statements.toString());
  }

  /** A kind of limit, and a verdict that became another. */
  @ParameterizedTest
  @CsvSource({
    "kind ceiling, DIFFERS",
    "kind floor, BROKEN",
    "not shown to met, DIFFERS",
    "met to not shown, BROKEN",
    "explanation, BROKEN",
  })
  void a_change_may_touch_a_kind_of_limit_or_of_verdict(
      String touches, Statement.Standing standing) {
    EnclosedEvidence other =
        with(
            text -> {
              int at = text.indexOf("\"limit\" : \"" + NITRITE);
              return text.substring(0, at)
                  + text.substring(at)
                      .replaceFirst("\"verdict\" : \"met\"", "\"verdict\" : \"not shown\"");
            });
    assertEquals(Set.of(standing), standings(statements(other, NOW, change("0.2.0", touches))));
  }

  /** Where a rule doubts something else, the verdicts of that lot may follow from it. */
  @ParameterizedTest
  @CsvSource({"once a note, DIFFERS", "another rule, BROKEN"})
  void what_is_found_follows_from_what_is_in_doubt(String touches, Statement.Standing standing) {
    String doubt =
        "\"faults\" : [ {\"rule\" : \"once a note\", \"severity\" : \"note\", \"lot\" : \"%s\"}, "
            .formatted(enclosed.lots().iterator().next());
    EnclosedEvidence other =
        with(
            text ->
                text.replaceFirst("149.366168", "141.366168")
                    .replaceFirst("\"faults\" : \\[ ?", Matcher.quoteReplacement(doubt))
                    .replaceFirst("\\}, \\]", "} ]"));
    assertEquals(Set.of(standing), standings(statements(other, NOW, change("0.2.0", touches))));
  }

  @Test
  void a_change_of_the_version_that_made_the_record_or_of_an_earlier_one_explains_nothing() {
    EnclosedEvidence other = with(text -> text.replace("149.366168", "141.366168"));
    assertEquals(
        Set.of(Statement.Standing.BROKEN),
        standings(statements(other, NOW, change("0.1.0", NITRITE))));
  }

  @Test
  void within_one_version_every_difference_is_a_change_of_the_record() {
    EnclosedEvidence other = with(text -> text.replace("149.366168", "141.366168"));
    List<Statement> statements = statements(other, "0.1.0", change("0.2.0", NITRITE));
    assertTrue(standings(statements).contains(Statement.Standing.BROKEN), statements.toString());
  }

  @Test
  void a_record_of_a_newer_version_is_left_to_that_version() {
    EnclosedEvidence newer = with(text -> text.replace("149.366168", "141.366168"));
    List<Statement> statements = statements(newer, "0.0.9");
    assertTrue(standings(statements).contains(Statement.Standing.DIFFERS), statements.toString());
    assertTrue(!standings(statements).contains(Statement.Standing.BROKEN), statements.toString());
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What people said of data in doubt stands in the record beside it, borne out or not. */
final class ExplainedPrintTest {

  private static final Path STUCK = Path.of("src", "test", "scenarios", "s8d-stuck");
  private static final String DAY = "2026-04-02";
  private static final String SAID =
      """
      lot,time,what,item,value,unit,by,instrument,note
      26084-B1,2026-04-02 18:05,explained,stuck probes.csv:248:P1,excluded chill.csv:5,,MA,,its wire had come loose
      26084-B1,2026-04-02 18:07,explained,probe moved probes.csv:283:P1,confirmed,,IQ,,the wire was put back
      """;

  @TempDir private static Path folder;
  private static final Map<String, Ran> CLOSED = new HashMap<>();

  /** The probe that stayed at 118.4 °F, a reading by hand meanwhile, and what was said of both. */
  private static Ran close(String language) {
    Path book = Tree.copy(STUCK, folder.resolve(language).resolve("book"));
    Path day = book.resolve(DAY);
    String zone = "\"zone\": \"America/New_York\"";
    Tree.edit(book.resolve("plan.json"), zone, zone + ", \"language\": \"%s\"".formatted(language));
    String out = "26084-B1,2026-04-02 17:52,out";
    String byHand = "26084-B1,2026-04-02 12:30,internal temperature,thickest,104.0,°F,IQ,HT-3,\n";
    Tree.edit(day.resolve("chill.csv"), out, byHand + out);
    Tree.write(
        day.resolve("actions.csv"), () -> Files.writeString(day.resolve("actions.csv"), SAID));
    return Ran.of("close", day, "--out", folder.resolve(language).resolve("out")).expect(1);
  }

  private static String printed(String language, String name) {
    Ran closed = CLOSED.computeIfAbsent(language, ExplainedPrintTest::close);
    if (name.isEmpty()) {
      return closed.flat();
    }
    Path out = folder.resolve(language).resolve("out");
    Path pdf = out.resolve(DAY).resolve("r1").resolve(name + ".pdf");
    return Pdfs.text(pdf).replaceAll("\\s+", " ");
  }

  @ParameterizedTest(name = "{0} {1}: {2}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          en | 26084-B1   | What was said of them
          en | 26084-B1   | MA 2026-04-02 18:05
          en | 26084-B1   | IQ 2026-04-02 18:07 NOT no other evidence is named; what
          en | 26084-B1   | RECORDED counts: a reading by another
          en | 26084-B1   | its wire had
          en | 26084-B1   | excluded:
          en | 26084-B1   | nothing bears it
          en | 26084-B1   | 34 118.4 °F stuck 2026-04-02/probes.csv:249:P1
          en | deviations | MA 2026-04-02 18:05
          en | day        | explained:
          en | ''         | explained by MA: its wire had come loose
          es | 26084-B1   | Lo que se dijo de ello
          es | 26084-B1   | 34 118.4 °F lectura
          """)
  void what_was_said_stands_beside_the_doubt(String language, String print, String words) {
    String text = printed(language, print);
    assertTrue(text.contains(words), words + " is not in " + text);
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.Conformance;
import org.flitchbook.OutsideProgram;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** An independent validator finds the printed records of the demo day archival and accessible. */
final class ConformanceTest {

  @TempDir private static Path folder;

  /** Each print on each paper and in each language; all four pairs of both in the whole run. */
  @TestFactory
  Stream<DynamicTest> a_print_conforms_to_the_standards_of_archives_and_of_accessibility() {
    return IntStream.range(0, DemoDay.PRINTS.size())
        .boxed()
        .flatMap(each -> tests(DemoDay.PRINTS.get(each), each % 2 == 0));
  }

  private static Stream<DynamicTest> tests(String name, boolean even) {
    List<DynamicTest> tests = new ArrayList<>();
    if (even || SeededRun.isWhole()) {
      tests.add(test(name, DemoDay.records(), "Letter"));
      tests.add(test(name, DemoDay.inSpanishOnA4(), "A4 in Spanish"));
    }
    if (!even || SeededRun.isWhole()) {
      tests.add(test(name, DemoDay.onA4(), "A4"));
      tests.add(test(name, DemoDay.inSpanish(), "Letter in Spanish"));
    }
    return tests.stream();
  }

  private static DynamicTest test(String name, Path records, String edition) {
    return DynamicTest.dynamicTest(
        name + " on " + edition, () -> conforms(records.resolve(name + ".pdf")));
  }

  private static void conforms(Path pdf) throws Exception {
    assertEquals(List.of(), Conformance.faults(Tree.bytes(pdf)));
  }

  /** Batch record, day sheet and deviation report, each after one signature and after two. */
  @TestFactory
  Stream<DynamicTest> a_signed_record_conforms_as_its_print_did() {
    Smokeyard yard = Smokeyard.closed(folder.resolve("yard"));
    return Stream.of("26047-B1", "day", "deviations")
        .map(name -> yard.record.resolveSibling(name + ".pdf"))
        .flatMap(pdf -> Stream.of("MA", "OR").map(who -> signed(yard, pdf, who)));
  }

  private static DynamicTest signed(Smokeyard yard, Path pdf, String who) {
    return DynamicTest.dynamicTest(
        pdf.getFileName() + " signed by " + who,
        () -> {
          yard.ran("sign", pdf, "--as", who).expect(0);
          conforms(pdf);
          String said = OutsideProgram.ask("qpdf", "--check", pdf);
          assertTrue(said.contains("No syntax or stream encoding errors found"), said);
        });
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.Conformance;
import org.flitchbook.OutsideProgram;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** An independent validator finds the printed records of the demo day archival and accessible. */
@Tag("machines")
final class ConformanceTest {

  private static final List<Edition> EDITIONS =
      List.of(
          new Edition("Letter", DemoDay::records),
          new Edition("A4 in Spanish", DemoDay::inSpanishOnA4),
          new Edition("A4", DemoDay::onA4),
          new Edition("Letter in Spanish", DemoDay::inSpanish));

  /** Between them they have both papers and both languages. */
  private static final int BY_TURNS = 2;

  @TempDir private static Path folder;

  private record Edition(String name, Supplier<Path> records) {}

  /** Each print in one edition, the first two by turns; in the whole run each print in all four. */
  @TestFactory
  Stream<DynamicTest> a_print_conforms_to_the_standards_of_archives_and_of_accessibility() {
    return IntStream.range(0, DemoDay.PRINTS.size())
        .boxed()
        .flatMap(
            each ->
                IntStream.range(0, EDITIONS.size())
                    .filter(edition -> SeededRun.isWhole() || edition == each % BY_TURNS)
                    .mapToObj(edition -> test(DemoDay.PRINTS.get(each), EDITIONS.get(edition))));
  }

  private static DynamicTest test(String name, Edition edition) {
    return DynamicTest.dynamicTest(
        name + " on " + edition.name, () -> conforms(edition.records.get().resolve(name + ".pdf")));
  }

  private static void conforms(Path pdf) throws Exception {
    assertEquals(List.of(), Conformance.faults(Tree.bytes(pdf)));
  }

  /**
   * Batch record, day sheet and deviation report, each after two signatures, and the day sheet also
   * after one; in the whole run each after one too.
   */
  @TestFactory
  Stream<DynamicTest> a_signed_record_conforms_as_its_print_did() {
    Smokeyard yard = Smokeyard.closed(folder.resolve("yard"));
    return Stream.of("26047-B1", "day", "deviations")
        .map(name -> yard.record.resolveSibling(name + ".pdf"))
        .flatMap(pdf -> Stream.of("MA", "OR").map(who -> signed(yard, pdf, who)));
  }

  @TestFactory
  Stream<DynamicTest> a_record_with_the_head_of_the_ledger_conforms() {
    Smokeyard yard = Smokeyard.closed(folder.resolve("again"));
    Path day = yard.book.resolve(Tree.DAY);
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    Ran.of("close", day, "--as", "MA", "--reason", "read again").expect(0);
    Path records = yard.book.resolve("records").resolve(Tree.DAY).resolve("r2");
    return Stream.of("26047-B1", "day", "deviations")
        .map(name -> DynamicTest.dynamicTest(name, () -> conforms(records.resolve(name + ".pdf"))));
  }

  private static DynamicTest signed(Smokeyard yard, Path pdf, String who) {
    return DynamicTest.dynamicTest(
        pdf.getFileName() + " signed by " + who,
        () -> {
          yard.ran("sign", pdf, "--as", who).expect(0);
          if (who.equals("OR") || pdf.endsWith("day.pdf") || SeededRun.isWhole()) {
            conforms(pdf);
          }
          String said = OutsideProgram.ask("qpdf", "--check", pdf);
          assertTrue(said.contains("No syntax or stream encoding errors found"), said);
        });
  }
}

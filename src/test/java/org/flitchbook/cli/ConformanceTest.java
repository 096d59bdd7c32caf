package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.flitchbook.OutsideProgram;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** An independent validator finds the printed records of the demo day archival and accessible. */
final class ConformanceTest {

  @TempDir private static Path folder;
  private static Path letter;
  private static Path a4;
  private static Path spanish;
  private static Path spanishOnA4;
  private static Locale before;

  /** The validator lower-cases words by the machine's locale, and a Turkish one has another i. */
  @BeforeAll
  static void close() {
    before = Locale.getDefault();
    Locale.setDefault(Locale.ROOT);
    VeraGreenfieldFoundryProvider.initialise();
    letter = DemoDay.records();
    a4 = DemoDay.onA4();
    spanish = DemoDay.inSpanish();
    spanishOnA4 = DemoDay.inSpanishOnA4();
  }

  @AfterAll
  static void restore() {
    Locale.setDefault(before);
  }

  @TestFactory
  Stream<DynamicTest> a_print_conforms_to_the_archival_standard() {
    return tests(PDFAFlavour.PDFA_3_A);
  }

  @TestFactory
  Stream<DynamicTest> a_print_conforms_to_the_standard_of_accessibility() {
    return tests(PDFAFlavour.PDFUA_1);
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
          assertEquals(List.of(), faults(pdf, PDFAFlavour.PDFA_3_A));
          assertEquals(List.of(), faults(pdf, PDFAFlavour.PDFUA_1));
          String said = OutsideProgram.ask("qpdf", "--check", pdf);
          assertTrue(said.contains("No syntax or stream encoding errors found"), said);
        });
  }

  private static Stream<DynamicTest> tests(PDFAFlavour flavour) {
    return Stream.of(
            tests(letter, "Letter", flavour),
            tests(a4, "A4", flavour),
            tests(spanish, "Letter in Spanish", flavour),
            tests(spanishOnA4, "A4 in Spanish", flavour))
        .flatMap(each -> each);
  }

  private static Stream<DynamicTest> tests(Path records, String paper, PDFAFlavour flavour) {
    return DemoDay.PRINTS.stream()
        .map(
            name ->
                DynamicTest.dynamicTest(
                    name + " on " + paper,
                    () ->
                        assertEquals(List.of(), faults(records.resolve(name + ".pdf"), flavour))));
  }

  private static List<String> faults(Path print, PDFAFlavour flavour) throws Exception {
    try (InputStream pdf = Files.newInputStream(print);
        PDFAParser parser = Foundries.defaultInstance().createParser(pdf, flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      return validator.validate(parser).getTestAssertions().stream()
          .filter(test -> test.getStatus() == TestAssertion.Status.FAILED)
          .map(test -> test.getRuleId().getClause() + " " + test.getMessage())
          .distinct()
          .toList();
    }
  }
}

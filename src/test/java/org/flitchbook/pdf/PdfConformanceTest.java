package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Locale;
import org.flitchbook.document.Paper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;

/** An independent validator finds the files archival and accessible. */
class PdfConformanceTest {
  @BeforeAll
  static void start() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  @ParameterizedTest
  @EnumSource(
      value = PDFAFlavour.class,
      names = {"PDFA_3_A", "PDFUA_1"})
  void a_record_conforms(PDFAFlavour flavour) throws Exception {
    assertEquals(List.of(), faults(Pdf.print(SampleRecord.on(Paper.LETTER)), flavour));
  }

  @ParameterizedTest
  @EnumSource(
      value = PDFAFlavour.class,
      names = {"PDFA_3_A", "PDFUA_1"})
  void a_table_over_many_pages_conforms(PDFAFlavour flavour) throws Exception {
    assertEquals(List.of(), faults(Pdf.print(Pages.document(Pages.table(200))), flavour));
  }

  /** The validator lower-cases words by the machine's locale, and a Turkish one has another i. */
  private static List<String> faults(byte[] pdf, PDFAFlavour flavour) throws Exception {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.ROOT);
    try {
      return found(pdf, flavour);
    } finally {
      Locale.setDefault(before);
    }
  }

  private static List<String> found(byte[] pdf, PDFAFlavour flavour) throws Exception {
    try (PDFAParser parser =
            Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      return validator.validate(parser).getTestAssertions().stream()
          .filter(test -> test.getStatus() == TestAssertion.Status.FAILED)
          .map(test -> test.getRuleId().getClause() + " " + test.getMessage())
          .toList();
    }
  }
}

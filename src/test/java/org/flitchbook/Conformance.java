package org.flitchbook;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Locale;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** An independent validator of archival and accessible files. */
public final class Conformance {

  private static final List<PDFAFlavour> STANDARDS =
      List.of(PDFAFlavour.PDFA_3_A, PDFAFlavour.PDFUA_1);

  static {
    VeraGreenfieldFoundryProvider.initialise();
  }

  private Conformance() {}

  /**
   * What a file breaks of PDF/A-3a and of PDF/UA-1, which are judged in one reading of it.
   *
   * <p>The validator lower-cases words by the machine's locale, and a Turkish one has another i.
   */
  public static List<String> faults(byte[] pdf) throws Exception {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.ROOT);
    try {
      return results(pdf).stream().flatMap(each -> faults(each).stream()).distinct().toList();
    } finally {
      Locale.setDefault(before);
    }
  }

  private static List<ValidationResult> results(byte[] pdf) throws Exception {
    try (PDFAParser parser =
            Foundries.defaultInstance()
                .createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFA_3_A);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(STANDARDS)) {
      parser.setFlavours(STANDARDS);
      List<ValidationResult> results = validator.validateAll(parser);
      List<PDFAFlavour> judged = results.stream().map(ValidationResult::getPDFAFlavour).toList();
      if (!judged.equals(STANDARDS)) {
        throw new AssertionError("judged by " + judged);
      }
      return results;
    }
  }

  private static List<String> faults(ValidationResult result) {
    return result.getTestAssertions().stream()
        .filter(test -> test.getStatus() == TestAssertion.Status.FAILED)
        .map(
            test ->
                result.getPDFAFlavour()
                    + " "
                    + test.getRuleId().getClause()
                    + " "
                    + test.getMessage())
        .toList();
  }
}

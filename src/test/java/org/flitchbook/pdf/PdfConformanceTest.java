package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.flitchbook.seal.SignaturesTest;
import org.flitchbook.sign.Seals;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;
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
    assertEquals(List.of(), faults(Pages.print(SampleRecord.on(Document.Paper.LETTER)), flavour));
  }

  @ParameterizedTest
  @EnumSource(
      value = PDFAFlavour.class,
      names = {"PDFA_3_A", "PDFUA_1"})
  void a_table_over_many_pages_conforms(PDFAFlavour flavour) throws Exception {
    assertEquals(List.of(), faults(Pages.print(Pages.document(Pages.table(200))), flavour));
  }

  @ParameterizedTest
  @EnumSource(
      value = PDFAFlavour.class,
      names = {"PDFA_3_A", "PDFUA_1"})
  void links_bookmarks_and_attachments_conform(PDFAFlavour flavour) throws Exception {
    Document document =
        Pages.document(
            new Block.Paragraph(Text.leading("a file", new Text.Target.File("26047-B1.pdf"))),
            new Block.Paragraph(
                Text.leading("a section ".repeat(20), new Text.Target.Section("Smoke"))),
            new Block.Paragraph(
                Text.leading("nowhere", new Text.Target.Section("no such heading"))),
            new Block.PageBreak(),
            new Block.Heading(2, "Smoke"),
            new Block.Paragraph(Text.of("words")));
    ByteBuffer bytes = ByteBuffer.wrap("lot,time\n".getBytes(StandardCharsets.UTF_8));
    List<Attachment> attachments =
        List.of(
            new Attachment("a.csv", "2026-02-24/a.csv", Attachment.Relation.SOURCE, bytes),
            new Attachment("b", "\u6e29\u5ea6/b", Attachment.Relation.DATA, bytes));
    assertEquals(List.of(), faults(Pdf.print(document, attachments), flavour));
  }

  @ParameterizedTest
  @EnumSource(
      value = PDFAFlavour.class,
      names = {"PDFA_3_A", "PDFUA_1"})
  void a_record_conforms_after_one_signature_and_after_two(PDFAFlavour flavour) throws Exception {
    SigningKey key = Seals.maud();
    UnaryOperator<byte[]> seal = covered -> Signing.sign(covered, key);
    byte[] print = Pages.print(SampleRecord.on(Document.Paper.LETTER));
    byte[] once = SignaturesTest.sign(print, "prepared", seal);
    assertEquals(List.of(), faults(once, flavour));
    assertEquals(List.of(), faults(SignaturesTest.sign(once, "reviewed", seal), flavour));
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

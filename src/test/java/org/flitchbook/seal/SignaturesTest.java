package org.flitchbook.seal;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.flitchbook.Wording;
import org.flitchbook.document.Document;
import org.flitchbook.message.Message;
import org.flitchbook.pdf.Attachment;
import org.flitchbook.pdf.Pages;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.pdf.SampleRecord;
import org.flitchbook.seal.PdfFile.SignatureRequest;
import org.flitchbook.seal.PdfSignatures.PdfSignature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Fields to sign in, what signing them changes, and what else is found to have changed. */
public final class SignaturesTest {

  /** An empty ASN.1 sequence of three octets stands in for a seal. */
  private static final byte[] SEAL = {0x30, 0x03, 0x02, 0x01, 0x07};

  private static final ZonedDateTime TIME =
      ZonedDateTime.parse("2026-02-24T18:40:12-05:00[America/New_York]");
  private static final byte[] PRINT = Pages.print(SampleRecord.on(Document.Paper.LETTER));
  private static final byte[] ONCE = sign(PRINT, "prepared");
  private static final byte[] TWICE = sign(ONCE, "reviewed");

  private static byte[] sign(byte[] pdf, String field) {
    return sign(pdf, field, covered -> SEAL);
  }

  public static byte[] sign(byte[] pdf, String field, UnaryOperator<byte[]> seal) {
    SignatureRequest autograph =
        new SignatureRequest(
            field,
            List.of("Signed by Maud Achterberg (MA), maker", "2026-02-24 18:40:12 −05:00"),
            Wording.ENGLISH,
            "Maud Achterberg",
            "Prepared by",
            TIME,
            field.equals("prepared"),
            4096);
    return PdfFile.sign(pdf, autograph, seal);
  }

  private static PdfSignatures look(byte[] pdf) {
    return PdfFile.signatures(pdf).orElseThrow();
  }

  private static List<String> texts(List<Message> messages) {
    return messages.stream().map(Message::toString).toList();
  }

  @Test
  void a_print_has_an_empty_field_for_each_box() {
    PdfSignatures expected =
        new PdfSignatures(List.of("prepared", "reviewed"), List.of(), PRINT.length, List.of());
    assertEquals(expected, look(PRINT));
  }

  @Test
  void signing_keeps_every_byte_before_it() {
    assertArrayEquals(PRINT, Arrays.copyOf(ONCE, PRINT.length));
    assertArrayEquals(ONCE, Arrays.copyOf(TWICE, ONCE.length));
  }

  @Test
  void the_same_signature_gives_the_same_bytes() {
    assertArrayEquals(ONCE, sign(PRINT, "prepared"));
  }

  @Test
  void a_signature_states_what_it_was_given() {
    PdfSignature signed = look(TWICE).signature("prepared").orElseThrow();
    assertEquals("Maud Achterberg", signed.name());
    assertEquals("Prepared by", signed.reason());
    assertEquals(Optional.of(OffsetDateTime.parse("2026-02-24T18:40:12-05:00")), signed.time());
    assertArrayEquals(SEAL, signed.sealed());
    assertTrue(signed.certifies());
  }

  @Test
  void a_signature_covers_its_whole_revision_but_for_its_own_place() {
    PdfSignatures look = look(TWICE);
    assertEquals(List.of(), look.faults());
    assertEquals(
        List.of("prepared", "reviewed"),
        look.signatures().stream().map(PdfSignature::field).toList());
    assertEquals(
        List.of(ONCE.length, TWICE.length),
        look.signatures().stream().map(PdfSignature::end).toList());
    for (PdfSignature each : look.signatures()) {
      assertEquals(each.end() - 2 * 4096 - 2, each.covered().length);
      assertEquals(List.of(), each.faults());
    }
  }

  @Test
  void signing_alone_changes_nothing_else() {
    assertEquals(List.of(), PdfFile.changes(TWICE, look(TWICE)));
  }

  @Test
  void a_field_is_signed_once_only() {
    assertThrows(IllegalArgumentException.class, () -> sign(ONCE, "prepared"));
    assertThrows(IllegalArgumentException.class, () -> sign(ONCE, "approved"));
  }

  /** Something done to a file, saved as an increment. */
  private interface Deed {
    void to(PDDocument file) throws IOException;
  }

  private static byte[] changed(byte[] pdf, Deed deed) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      deed.to(file);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      file.saveIncremental(out);
      return out.toByteArray();
    }
  }

  private static void blank(PDDocument file) throws IOException {
    PDPage page = file.getPage(1);
    page.setContents(new PDStream(file, new ByteArrayInputStream("q Q".getBytes(ISO_8859_1))));
    page.getCOSObject().setNeedToBeUpdated(true);
  }

  @Test
  void a_page_changed_between_two_signatures_is_named() throws IOException {
    byte[] shadow = sign(changed(ONCE, SignaturesTest::blank), "reviewed");
    assertEquals(
        List.of("page 2 was changed before the signature in \"reviewed\" was made"),
        texts(PdfFile.changes(shadow, look(shadow))));
    assertEquals(List.of("it was saved 4 times, and signed 2 times"), texts(look(shadow).faults()));
  }

  @Test
  void a_page_changed_before_the_first_signature_is_named() throws IOException {
    byte[] shadow = sign(changed(PRINT, SignaturesTest::blank), "prepared");
    assertEquals(
        List.of("page 2 was changed before the signature in \"prepared\" was made"),
        texts(PdfFile.changes(shadow, look(shadow))));
  }

  @Test
  void a_page_that_goes_is_named() throws IOException {
    byte[] shadow =
        sign(
            changed(
                ONCE,
                file -> {
                  file.getPages().getCOSObject().setNeedToBeUpdated(true);
                  file.removePage(file.getNumberOfPages() - 1);
                }),
            "reviewed");
    int last = Loader.loadPDF(ONCE).getNumberOfPages();
    assertEquals(
        List.of("page " + last + " was taken out before the signature in \"reviewed\" was made"),
        texts(PdfFile.changes(shadow, look(shadow))));
  }

  @Test
  void an_attachment_changed_between_two_signatures_is_named() throws IOException {
    byte[] print =
        Pdf.print(
            SampleRecord.on(Document.Paper.A4),
            List.of(carried("cure.csv", "11.5"), carried("x", "1")));
    byte[] signed = sign(print, "prepared");
    Deed swap =
        file -> {
          Pages.attach(file, List.of(carried("cure.csv", "10.5"), carried("y", "1")));
          file.getDocumentCatalog().getCOSObject().setNeedToBeUpdated(true);
        };
    byte[] shadow = sign(changed(signed, swap), "reviewed");
    assertEquals(
        List.of(
            "the attachment cure.csv was changed before the signature in \"reviewed\" was made",
            "the attachment x was taken out before the signature in \"reviewed\" was made",
            "the attachment y was added before the signature in \"reviewed\" was made"),
        texts(PdfFile.changes(shadow, look(shadow))));
  }

  private static Attachment carried(String name, String content) {
    return new Attachment(
        name, name, Attachment.Relation.SOURCE, ByteBuffer.wrap(content.getBytes(ISO_8859_1)));
  }

  @Test
  void another_look_of_an_earlier_signature_is_noticed() throws IOException {
    byte[] shadow =
        sign(
            changed(
                ONCE,
                file -> {
                  var widget =
                      file.getDocumentCatalog()
                          .getAcroForm(null)
                          .getField("prepared")
                          .getWidgets()
                          .get(0);
                  widget.getCOSObject().setItem(COSName.AP, new COSDictionary());
                  widget.getCOSObject().setNeedToBeUpdated(true);
                }),
            "reviewed");
    assertEquals(
        List.of("page 1 was changed before the signature in \"reviewed\" was made"),
        texts(PdfFile.changes(shadow, look(shadow))));
  }

  @Test
  void another_description_of_the_file_is_noticed() throws IOException {
    byte[] shadow =
        sign(
            changed(
                ONCE,
                file -> {
                  file.getDocumentCatalog()
                      .setMetadata(
                          new PDMetadata(file, new ByteArrayInputStream(new byte[] {' '})));
                  file.getDocumentCatalog().getCOSObject().setNeedToBeUpdated(true);
                }),
            "reviewed");
    assertEquals(1, PdfFile.changes(shadow, look(shadow)).size());
  }

  @Test
  void what_is_saved_behind_the_last_signature_is_noticed() throws IOException {
    byte[] more = changed(TWICE, SignaturesTest::blank);
    assertEquals(
        List.of(
            "it was saved 4 times, and signed 2 times",
            more.length - TWICE.length + " bytes were added behind the last signature"),
        texts(look(more).faults()));
  }

  @Test
  void a_print_that_was_saved_again_is_noticed() throws IOException {
    assertEquals(
        List.of("it was saved 2 times, and signed 0 times"),
        texts(look(changed(PRINT, SignaturesTest::blank)).faults()));
  }

  /** The place of the last signature is at its begin, the zeros behind the seal at 200. */
  @ParameterizedTest
  @CsvSource({
    "0, (, it does not say rightly which bytes it covers",
    "3, g, its place holds something else than the digits of a signature",
    "4, ':', its place holds something else than the digits of a signature",
    "200, 1, something stands behind it in its place"
  })
  void a_byte_changed_in_the_place_of_a_signature_is_noticed(int at, char letter, String fault) {
    byte[] changed = TWICE.clone();
    changed[look(TWICE).signature("reviewed").orElseThrow().before().remaining() + at] =
        (byte) letter;
    assertEquals(List.of(fault), texts(look(changed).signature("reviewed").orElseThrow().faults()));
  }

  @Test
  void what_is_no_pdf_shows_nothing() {
    assertEquals(Optional.empty(), PdfFile.signatures(new byte[] {1, 2, 3}));
  }
}

package org.flitchbook.seal;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.flitchbook.document.Block;
import org.flitchbook.document.Text;
import org.flitchbook.pdf.Attachment;
import org.flitchbook.pdf.Pages;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.seal.PdfFile.Extraction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files go into a print and come out of it byte for byte, and hostile prints are refused. */
class AttachmentsTest {
  private static final Attachment SHEET =
      attachment("2026-02-24_cure.csv", "2026-02-24/cure.csv", "lot,time\n".getBytes(UTF_8));
  private static final Attachment ODD =
      attachment("Fühler 温度.bin", "a log", new byte[] {0, -1, 13, 10});

  private static Attachment attachment(String name, String description, byte[] bytes) {
    return new Attachment(name, description, Attachment.Relation.SOURCE, ByteBuffer.wrap(bytes));
  }

  private static byte[] print(Attachment... attachments) {
    return Pdf.print(Pages.document(new Block.Paragraph(Text.of("words"))), List.of(attachments));
  }

  private static List<Attachment> carried(byte[] pdf) {
    return assertInstanceOf(Extraction.Attachments.class, PdfFile.attachments(pdf)).attachments();
  }

  private static String refused(byte[] pdf) {
    return assertInstanceOf(Extraction.Refused.class, PdfFile.attachments(pdf)).found().toString();
  }

  @Test
  void attachments_come_back_as_they_were_in_the_order_of_their_names() {
    Attachment findings =
        new Attachment(
            "findings.json", "found", Attachment.Relation.DATA, ByteBuffer.wrap(new byte[0]));
    assertEquals(List.of(SHEET, ODD, findings), carried(print(findings, ODD, SHEET)));
    assertEquals(List.of(), carried(print()));
  }

  @Test
  void the_order_in_which_they_are_handed_over_changes_no_byte() {
    assertArrayEquals(print(SHEET, ODD), print(ODD, SHEET));
  }

  @Test
  void each_is_dated_as_the_document_and_says_what_it_is() throws IOException {
    try (PDDocument file = Loader.loadPDF(print(SHEET))) {
      PDComplexFileSpecification found =
          file.getDocumentCatalog().getNames().getEmbeddedFiles().getNames().get(SHEET.name());
      assertEquals(
          Instant.parse("2026-02-24T22:30:00Z"), found.getEmbeddedFile().getModDate().toInstant());
      assertEquals("text/csv", found.getEmbeddedFile().getSubtype());
      assertEquals(SHEET.bytes().length, found.getEmbeddedFile().getSize());
      COSArray associated =
          file.getDocumentCatalog().getCOSObject().getCOSArray(COSName.getPDFName("AF"));
      assertEquals(found.getCOSObject(), associated.getObject(0));
    }
  }

  @ParameterizedTest
  @CsvSource({"'', words", "a/b.csv, words", "a.csv, ' '"})
  void a_name_without_words_or_with_a_folder_is_refused(String name, String description) {
    assertThrows(IllegalArgumentException.class, () -> attachment(name, description, new byte[0]));
  }

  @Test
  void two_of_one_name_are_refused() {
    assertThrows(IllegalArgumentException.class, () -> print(SHEET, SHEET));
  }

  /** Something done to the first attachment of a file. */
  @FunctionalInterface
  private interface Deed {
    void to(COSDictionary specification, COSStream content) throws IOException;
  }

  private static byte[] spoiled(Deed deed) throws IOException {
    try (PDDocument file = Loader.loadPDF(print(SHEET))) {
      PDComplexFileSpecification found =
          file.getDocumentCatalog().getNames().getEmbeddedFiles().getNames().get(SHEET.name());
      deed.to(found.getCOSObject(), found.getEmbeddedFile().getCOSObject());
      return saved(file);
    }
  }

  private static byte[] saved(PDDocument file) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    file.save(out);
    return out.toByteArray();
  }

  private static void write(COSStream content, long size, COSName... filters) throws IOException {
    COSArray all = new COSArray();
    List.of(filters).forEach(all::add);
    try (OutputStream out = content.createOutputStream(filters.length == 1 ? filters[0] : all)) {
      byte[] block = new byte[1 << 20];
      for (long left = size; left > 0; left -= block.length) {
        out.write(block, 0, (int) Math.min(left, block.length));
      }
    }
  }

  @Test
  void some_kilobytes_that_unpack_to_more_than_a_book_may_hold_are_refused() throws IOException {
    byte[] bomb =
        spoiled(
            (name, content) -> write(content, AttachmentReader.LARGEST + 1L, COSName.FLATE_DECODE));
    assertTrue(bomb.length < 200_000, "bytes: " + bomb.length);
    assertTrue(refused(bomb).contains("unpacks to more than 64 MB"), refused(bomb));
  }

  @Test
  void a_file_packed_twice_is_refused_before_it_is_unpacked() throws IOException {
    byte[] twice =
        spoiled(
            (name, content) -> write(content, 4 << 20, COSName.FLATE_DECODE, COSName.FLATE_DECODE));
    assertTrue(refused(twice).contains("packed as"), refused(twice));
  }

  @Test
  void a_size_that_is_not_the_stated_one_is_refused() throws IOException {
    byte[] longer = spoiled((name, content) -> write(content, 10, COSName.FLATE_DECODE));
    assertEquals("2026-02-24_cure.csv, stated to have 9 bytes", refused(longer));
    byte[] unstated = spoiled((name, content) -> content.removeItem(COSName.PARAMS));
    assertEquals("2026-02-24_cure.csv, stated to have -1 bytes", refused(unstated));
  }

  @ParameterizedTest
  @ValueSource(strings = {"UF", "Desc", "AFRelationship", "EF"})
  void an_attachment_that_lacks_something_is_refused(String key) throws IOException {
    byte[] lacking =
        spoiled((specification, content) -> specification.removeItem(COSName.getPDFName(key)));
    assertNotNull(refused(lacking));
  }

  @Test
  void a_name_that_would_leave_its_folder_is_refused() throws IOException {
    byte[] leaving =
        spoiled((name, content) -> name.setString(COSName.getPDFName("UF"), "../../etc/x"));
    assertEquals("an attachment called ../../etc/x", refused(leaving));
  }

  @Test
  void a_tree_of_names_that_is_its_own_branch_is_refused() throws IOException {
    try (PDDocument file = Loader.loadPDF(print(SHEET))) {
      COSDictionary tree = file.getDocumentCatalog().getNames().getEmbeddedFiles().getCOSObject();
      tree.removeItem(COSName.NAMES);
      COSArray kids = new COSArray();
      kids.add(tree);
      tree.setItem(COSName.KIDS, kids);
      assertTrue(refused(saved(file)).contains("too deep"));
    }
  }

  @Test
  void an_encrypted_file_and_what_is_no_file_are_refused() throws IOException {
    try (PDDocument file = Loader.loadPDF(print(SHEET))) {
      file.protect(new StandardProtectionPolicy("owner", "", new AccessPermission()));
      assertEquals("an encrypted file", refused(saved(file)));
    }
    assertTrue(refused("lot,time\n".getBytes(UTF_8)).startsWith("what can't be read as PDF"));
    assertTrue(refused(new byte[0]).startsWith("what can't be read as PDF"));
  }

  /** Whatever bit is wrong, the answer is a value. */
  @Test
  void a_file_with_a_wrong_bit_is_read_or_refused() {
    byte[] whole = print(SHEET, ODD);
    Random chance = new Random(7);
    for (int i = 0; i < 400; i++) {
      byte[] wrong = whole.clone();
      wrong[chance.nextInt(wrong.length)] ^= (byte) (1 << chance.nextInt(8));
      assertNotNull(PdfFile.attachments(wrong));
    }
  }
}

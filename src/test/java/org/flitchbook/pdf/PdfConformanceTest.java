package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.UnaryOperator;
import org.flitchbook.Conformance;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;
import org.flitchbook.seal.SignaturesTest;
import org.flitchbook.sign.Seals;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;
import org.junit.jupiter.api.Test;

/** An independent validator finds the files archival and accessible. */
class PdfConformanceTest {

  @Test
  void a_record_conforms() throws Exception {
    assertEquals(
        List.of(), Conformance.faults(Pages.print(SampleRecord.on(Document.Paper.LETTER))));
  }

  @Test
  void a_table_over_many_pages_conforms() throws Exception {
    assertEquals(List.of(), Conformance.faults(Pages.print(Pages.document(Pages.table(200)))));
  }

  @Test
  void links_bookmarks_and_attachments_conform() throws Exception {
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
    assertEquals(List.of(), Conformance.faults(Pdf.print(document, attachments)));
  }

  @Test
  void a_record_conforms_after_one_signature_and_after_two() throws Exception {
    SigningKey key = Seals.maud();
    UnaryOperator<byte[]> seal = covered -> Signing.sign(covered, key);
    byte[] print = Pages.print(SampleRecord.on(Document.Paper.LETTER));
    byte[] once = SignaturesTest.sign(print, "prepared", seal);
    assertEquals(List.of(), Conformance.faults(once));
    assertEquals(List.of(), Conformance.faults(SignaturesTest.sign(once, "reviewed", seal)));
  }
}

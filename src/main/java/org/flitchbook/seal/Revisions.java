package org.flitchbook.seal;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.flitchbook.message.Message;
import org.flitchbook.pdf.Attachment;
import org.flitchbook.seal.PdfSignatures.PdfSignature;

/**
 * Compares each revision of a signed file with the one before. A later signature covers what was
 * changed between the two, and so both are valid all the same; the change itself must be found.
 */
final class Revisions {
  private final byte[] pdf;
  private final PdfSignatures signatures;
  private final List<Message> changes = new ArrayList<>();

  Revisions(byte[] pdf, PdfSignatures signatures) {
    this.pdf = pdf;
    this.signatures = signatures;
  }

  /** What was changed beyond the signing of a field. */
  List<Message> changes() throws IOException {
    int end = signatures.printed();
    for (PdfSignature each : signatures.signatures()) {
      compare(Arrays.copyOf(pdf, end), Arrays.copyOf(pdf, each.end()), each.field());
      end = each.end();
    }
    return changes;
  }

  private void compare(byte[] before, byte[] after, String field) throws IOException {
    try (PDDocument one = PdfBox.load(before);
        PDDocument other = PdfBox.load(after)) {
      if (ContentHash.of(one, field).equals(ContentHash.of(other, field))) {
        return;
      }
      int found = changes.size();
      compare(pages(one), pages(other), field);
      compare(attachments(one), attachments(other), field);
      if (changes.size() == found) {
        changes.add(
            changed(say("seal.part.other", "something beside the pages and attachments"), field));
      }
    }
  }

  private static Map<Message, String> pages(PDDocument file) throws IOException {
    List<byte[]> contents = new ArrayList<>();
    PdfBox.call(
        () -> {
          for (PDPage page : file.getPages()) {
            try (InputStream in = page.getContents()) {
              contents.add(in.readAllBytes());
            }
          }
          return contents;
        });
    Map<Message, String> pages = new LinkedHashMap<>();
    for (byte[] each : contents) {
      pages.put(say("seal.part.page", "page {0}", pages.size() + 1), hash(each));
    }
    return pages;
  }

  private static String hash(byte[] bytes) {
    return HexFormat.of().formatHex(ContentHash.sha256().digest(bytes));
  }

  private static Map<Message, String> attachments(PDDocument file) throws IOException {
    Map<Message, String> attachments = new LinkedHashMap<>();
    try {
      for (Attachment each : new AttachmentReader().read(file).values()) {
        Message part = say("seal.part.attachment", "the attachment {0}", each.name());
        attachments.put(part, hash(each.bytes()));
      }
    } catch (AttachmentReader.Refusal refusal) {
      String why = refusal.getMessage();
      return Map.of(say("seal.part.attachments", "the attachments"), why);
    }
    return attachments;
  }

  private void compare(Map<Message, String> before, Map<Message, String> after, String field) {
    before.forEach(
        (part, hash) -> {
          if (!after.containsKey(part)) {
            changes.add(
                say(
                    "seal.change.taken-out",
                    "{0} was taken out before the signature in \"{1}\" was made",
                    part,
                    field));
          } else if (!hash.equals(after.get(part))) {
            changes.add(changed(part, field));
          }
        });
    for (Message part : after.keySet()) {
      if (!before.containsKey(part)) {
        changes.add(
            say(
                "seal.change.added",
                "{0} was added before the signature in \"{1}\" was made",
                part,
                field));
      }
    }
  }

  private static Message changed(Message part, String field) {
    return say(
        "seal.change.changed",
        "{0} was changed before the signature in \"{1}\" was made",
        part,
        field);
  }
}

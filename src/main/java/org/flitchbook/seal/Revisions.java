package org.flitchbook.seal;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.message.Message;
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
    try (PDDocument one = PdfFile.load(before);
        PDDocument other = PdfFile.load(after)) {
      Map<COSDictionary, Set<String>> unsigned = Signable.changes(one, field);
      Map<COSDictionary, Set<String>> signed = Signable.changes(other, field);
      if (ContentHash.of(one, unsigned).equals(ContentHash.of(other, signed))) {
        return;
      }
      int found = changes.size();
      compare(Parts.of(one, unsigned), Parts.of(other, signed), field);
      if (changes.size() == found) {
        changes.add(changed(Parts.BESIDE, field));
      }
    }
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

package org.flitchbook.seal;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
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
    try (PDDocument one = PdfFile.load(before);
        PDDocument other = PdfFile.load(after)) {
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
    PdfFile.call(
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

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException missing) {
      throw new AssertionError("every Java platform has SHA-256", missing);
    }
  }

  private static String hash(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
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

  /**
   * A hash of all that a file shows, carries and says, but for what signing in one field changes.
   * Objects are numbered in the order in which they are come upon, so that two files alike in
   * everything but their bytes' order have the same.
   */
  private static final class ContentHash {
    private static final Set<String> FILLED = Set.of("V", "AP", "Contents");
    private static final Set<String> OF_THE_FORM = Set.of("SigFlags");
    private static final Set<String> OF_THE_CATALOG = Set.of("Perms");

    private final String field;
    private final MessageDigest digest = sha256();
    private final Map<COSObjectKey, Integer> numbers = new HashMap<>();
    private final Deque<COSObject> waiting = new ArrayDeque<>();

    private ContentHash(String field) {
      this.field = field;
    }

    /** The hash of a file, without what signing in that field changes. */
    static String of(PDDocument file, String field) throws IOException {
      ContentHash hash = new ContentHash(field);
      COSDictionary trailer = file.getDocument().getTrailer();
      hash.write(trailer.getItem(COSName.ROOT));
      hash.write(trailer.getItem(COSName.INFO));
      while (!hash.waiting.isEmpty()) {
        hash.write(hash.waiting.remove().getObject());
      }
      return HexFormat.of().formatHex(hash.digest.digest());
    }

    private void write(COSBase value) throws IOException {
      if (value instanceof COSObject reference) {
        word("R" + number(reference));
      } else if (value instanceof COSDictionary dictionary) {
        write(dictionary);
      } else if (value instanceof COSArray array) {
        word("[" + array.size());
        for (int i = 0; i < array.size(); i++) {
          write(array.get(i));
        }
      } else if (value instanceof COSString text) {
        word("(" + text.toHexString());
      } else {
        word(String.valueOf(value));
      }
    }

    private int number(COSObject reference) {
      return numbers.computeIfAbsent(
          reference.getKey(),
          first -> {
            waiting.add(reference);
            return numbers.size();
          });
    }

    private void write(COSDictionary dictionary) throws IOException {
      Map<String, COSBase> members = new TreeMap<>();
      Set<String> changing = changing(dictionary);
      for (COSName key : dictionary.keySet()) {
        if (!changing.contains(key.getName())) {
          members.put(key.getName(), dictionary.getItem(key));
        }
      }
      word("<" + members.size());
      for (Map.Entry<String, COSBase> member : members.entrySet()) {
        word(member.getKey());
        write(member.getValue());
      }
      if (dictionary instanceof COSStream stream) {
        try (InputStream raw = stream.createRawInputStream()) {
          word("stream");
          digest.update(raw.readAllBytes());
        }
      }
    }

    private Set<String> changing(COSDictionary dictionary) {
      if ("Sig".equals(dictionary.getNameAsString(COSName.FT))
          && field.equals(dictionary.getString(COSName.T))) {
        return FILLED;
      }
      if ("Catalog".equals(dictionary.getNameAsString(COSName.TYPE))) {
        return OF_THE_CATALOG;
      }
      return dictionary.containsKey(COSName.FIELDS) ? OF_THE_FORM : Set.of();
    }

    private void word(String word) {
      digest.update(word.getBytes(StandardCharsets.UTF_8));
      digest.update((byte) 0);
    }
  }
}

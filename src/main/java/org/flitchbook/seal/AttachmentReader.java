package org.flitchbook.seal;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.message.Message;
import org.flitchbook.pdf.Attachment;
import org.flitchbook.seal.PdfFile.Extraction;
import org.jspecify.annotations.Nullable;

/**
 * Takes attachments out of a file that anybody may have made. Streams are unpacked here and not by
 * PDFBox, which would unpack some kilobytes into gigabytes without asking.
 */
final class AttachmentReader {
  /** As large as a file that a book may hold. */
  static final int LARGEST = 64 * 1024 * 1024;

  static final long LARGEST_ALL = 8L * LARGEST;
  static final int MOST = 20_000;

  /** Levels of the tree of names; a tree of twenty thousand needs two. */
  private static final int DEEPEST = 8;

  private static final COSName EMBEDDED = COSName.getPDFName("EmbeddedFiles");
  private static final COSName UNICODE_NAME = COSName.getPDFName("UF");
  private static final COSName RELATION = COSName.getPDFName("AFRelationship");

  private final Map<String, Attachment> found = new TreeMap<>();
  private long total;

  /** Why a file is refused. */
  static final class Refusal extends Exception {
    private static final long serialVersionUID = 1L;
    final transient Extraction.Refused refused;

    Refusal(Message found, Message expected) {
      super(found.toString());
      this.refused = new Extraction.Refused(found, expected);
    }
  }

  Map<String, Attachment> read(PDDocument file) throws IOException, Refusal {
    COSDictionary names = file.getDocumentCatalog().getCOSObject().getCOSDictionary(COSName.NAMES);
    COSDictionary tree = names == null ? null : names.getCOSDictionary(EMBEDDED);
    if (tree != null) {
      walk(tree, 0);
    }
    return found;
  }

  private void walk(COSDictionary node, int depth) throws IOException, Refusal {
    check(
        depth <= DEEPEST,
        say("seal.attachments.deep", "a tree of attachments that is too deep"),
        say("seal.attachments.levels", "{0} levels at most", DEEPEST));
    COSArray pairs = node.getCOSArray(COSName.NAMES);
    for (int i = 1; pairs != null && i < pairs.size(); i += 2) {
      add(dictionary(pairs, i));
    }
    COSArray kids = node.getCOSArray(COSName.KIDS);
    for (int i = 0; kids != null && i < kids.size(); i++) {
      walk(dictionary(kids, i), depth + 1);
    }
  }

  private static COSDictionary dictionary(COSArray array, int index) throws Refusal {
    if (array.getObject(index) instanceof COSDictionary dictionary) {
      return dictionary;
    }
    throw new Refusal(
        say("seal.attachments.no-entry", "an entry among the attachments that is none"),
        say("seal.attachments.entry", "a file specification"));
  }

  private void add(COSDictionary specification) throws IOException, Refusal {
    String name = name(specification);
    String description =
        text(
            specification,
            COSName.DESC,
            say("seal.attachment.undescribed", "{0}, without a description", name));
    COSDictionary embedded = specification.getCOSDictionary(COSName.EF);
    COSBase stream = embedded == null ? null : embedded.getDictionaryObject(COSName.F);
    if (!(stream instanceof COSStream content)) {
      throw new Refusal(
          say("seal.attachment.empty", "{0}, without its content", name),
          say("seal.attachment.content", "an embedded file"));
    }
    Attachment attachment =
        new Attachment(name, description, relation(name, specification), unpacked(name, content));
    check(
        found.put(name, attachment) == null,
        say("seal.attachment.twice", "two attachments called {0}", name),
        say("seal.attachment.once", "one of each name"));
    check(
        found.size() <= MOST,
        say("seal.attachments.many", "more than {0} attachments", MOST),
        say("seal.attachments.most", "at most so many"));
  }

  private static void check(boolean sound, Message found, Message expected) throws Refusal {
    if (!sound) {
      throw new Refusal(found, expected);
    }
  }

  private static String name(COSDictionary specification) throws Refusal {
    String name =
        text(
            specification,
            UNICODE_NAME,
            say("seal.attachment.unnamed", "an attachment without a name"));
    check(
        !name.contains("/"),
        say("seal.attachment.folder", "an attachment called {0}", name),
        say("seal.attachment.no-folder", "a name without a folder"));
    return name;
  }

  private static String text(COSDictionary specification, COSName key, Message without)
      throws Refusal {
    String text = specification.getString(key);
    if (text == null || text.isBlank()) {
      throw new Refusal(without, say("seal.attachment.named", "a name and a description"));
    }
    return text;
  }

  private static Attachment.Relation relation(String name, COSDictionary specification)
      throws Refusal {
    String word = String.valueOf(specification.getNameAsString(RELATION));
    return Attachment.Relation.parse(word)
        .orElseThrow(
            () ->
                new Refusal(
                    say("seal.attachment.related", "{0}, related as {1}", name, word),
                    say("seal.attachment.relation", "Source or Data")));
  }

  private ByteBuffer unpacked(String name, COSStream content) throws IOException, Refusal {
    byte[] bytes;
    try (InputStream raw = content.createRawInputStream();
        InputStream plain = plain(name, content.getFilters(), raw)) {
      bytes = plain.readNBytes(LARGEST + 1);
    }
    total += bytes.length;
    check(
        bytes.length <= LARGEST && total <= LARGEST_ALL,
        say(
            "seal.attachment.large",
            "{0}, which unpacks to more than {1} MB or makes more than {2} MB with the others",
            name,
            LARGEST >> 20,
            LARGEST_ALL >> 20),
        say("seal.attachment.size", "no more than a book may hold"));
    COSDictionary parameters = content.getCOSDictionary(COSName.PARAMS);
    long stated = parameters == null ? -1 : parameters.getLong(COSName.SIZE);
    check(
        stated == bytes.length,
        say("seal.attachment.stated", "{0}, stated to have {1} bytes", name, stated),
        say("seal.attachment.bytes", "its {0} bytes", bytes.length));
    return ByteBuffer.wrap(bytes);
  }

  private static InputStream plain(String name, @Nullable COSBase filter, InputStream raw)
      throws Refusal {
    if (filter == null) {
      return raw;
    }
    check(
        filter == COSName.FLATE_DECODE,
        say("seal.attachment.packed", "{0}, packed as {1}", name, filter.toString()),
        say("seal.attachment.packing", "plain bytes or FlateDecode alone"));
    return new InflaterInputStream(raw);
  }
}

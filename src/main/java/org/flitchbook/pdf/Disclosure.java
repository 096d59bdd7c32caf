package org.flitchbook.pdf;

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
import org.jspecify.annotations.Nullable;

/**
 * Takes attachments out of a file that anybody may have made. Streams are unpacked here and not by
 * PDFBox, which would unpack some kilobytes into gigabytes without asking.
 */
final class Disclosure {
  /** As large as a file that a book may hold. */
  static final int LARGEST = 64 * 1024 * 1024;

  static final long LARGEST_ALL = 8L * LARGEST;
  static final int MOST = 20_000;

  /** Levels of the tree of names; a tree of twenty thousand needs two. */
  private static final int DEEPEST = 8;

  private static final COSName EMBEDDED = COSName.getPDFName("EmbeddedFiles");
  private static final COSName UNICODE_NAME = COSName.getPDFName("UF");

  private final Map<String, Attachment> found = new TreeMap<>();
  private long total;

  /** Why a file is refused. */
  static final class Refusal extends Exception {
    private static final long serialVersionUID = 1L;
    final String found;
    final String expected;

    Refusal(String found, String expected) {
      super(found);
      this.found = found;
      this.expected = expected;
    }
  }

  Map<String, Attachment> of(PDDocument file) throws IOException, Refusal {
    COSDictionary names = file.getDocumentCatalog().getCOSObject().getCOSDictionary(COSName.NAMES);
    COSDictionary tree = names == null ? null : names.getCOSDictionary(EMBEDDED);
    if (tree != null) {
      walk(tree, 0);
    }
    return found;
  }

  private void walk(COSDictionary node, int depth) throws IOException, Refusal {
    if (depth > DEEPEST) {
      throw new Refusal("a tree of attachments that is too deep", DEEPEST + " levels at most");
    }
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
    throw new Refusal("an entry among the attachments that is none", "a file specification");
  }

  private void add(COSDictionary specification) throws IOException, Refusal {
    String name = name(specification);
    String description = text(specification, COSName.DESC, name + ", without a description");
    COSDictionary embedded = specification.getCOSDictionary(COSName.EF);
    COSBase stream = embedded == null ? null : embedded.getDictionaryObject(COSName.F);
    if (!(stream instanceof COSStream content)) {
      throw new Refusal(name + ", without its content", "an embedded file");
    }
    Attachment attachment =
        new Attachment(name, description, relation(name, specification), unpacked(name, content));
    if (found.put(name, attachment) != null) {
      throw new Refusal("two attachments called " + name, "one of each name");
    }
    if (found.size() > MOST) {
      throw new Refusal("more than " + MOST + " attachments", "at most so many");
    }
  }

  private static String name(COSDictionary specification) throws Refusal {
    String name = text(specification, UNICODE_NAME, "an attachment without a name");
    if (name.contains("/")) {
      throw new Refusal("an attachment called " + name, "a name without a folder");
    }
    return name;
  }

  private static String text(COSDictionary specification, COSName key, String without)
      throws Refusal {
    String text = specification.getString(key);
    if (text == null || text.isBlank()) {
      throw new Refusal(without, "a name and a description");
    }
    return text;
  }

  private static Attachment.Relation relation(String name, COSDictionary specification)
      throws Refusal {
    String word = specification.getNameAsString(Enclosure.RELATION);
    for (Attachment.Relation each : Attachment.Relation.values()) {
      if (each.word.equals(word)) {
        return each;
      }
    }
    throw new Refusal(name + ", related as " + word, "Source or Data");
  }

  private ByteBuffer unpacked(String name, COSStream content) throws IOException, Refusal {
    byte[] bytes;
    try (InputStream raw = content.createRawInputStream();
        InputStream plain = plain(name, content.getFilters(), raw)) {
      bytes = plain.readNBytes(LARGEST + 1);
    }
    total += bytes.length;
    if (bytes.length > LARGEST || total > LARGEST_ALL) {
      throw new Refusal(
          name
              + ", which unpacks to more than "
              + (LARGEST >> 20)
              + " MB or makes more than "
              + (LARGEST_ALL >> 20)
              + " MB with the others",
          "no more than a book may hold");
    }
    checkSize(name, content, bytes.length);
    return ByteBuffer.wrap(bytes);
  }

  private static InputStream plain(String name, @Nullable COSBase filter, InputStream raw)
      throws Refusal {
    if (filter == null) {
      return raw;
    }
    if (filter == COSName.FLATE_DECODE) {
      return new InflaterInputStream(raw);
    }
    throw new Refusal(name + ", packed as " + filter, "plain bytes or FlateDecode alone");
  }

  private static void checkSize(String name, COSStream content, int size) throws Refusal {
    COSDictionary parameters = content.getCOSDictionary(COSName.PARAMS);
    long stated = parameters == null ? -1 : parameters.getLong(COSName.SIZE);
    if (stated != size) {
      throw new Refusal(name + ", stated to have " + stated + " bytes", "its " + size + " bytes");
    }
  }
}

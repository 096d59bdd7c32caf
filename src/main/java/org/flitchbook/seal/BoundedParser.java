package org.flitchbook.seal;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.util.IdentityHashMap;
import java.util.Optional;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdfparser.PDFParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Parses a file that anybody may have made, and refuses it before PDFBox unpacks what would fill
 * the memory: each stream is counted where it is met, and each page by the streams that it draws.
 */
final class BoundedParser extends PDFParser {
  /** Ten times the largest page or font of a record, unpacked. */
  static final int LARGEST = 16 * 1024 * 1024;

  /** The places of more than a hundred thousand objects: each takes a hundred times its bytes. */
  static final int LARGEST_PLACES = 1024 * 1024;

  /** Each object takes some times its bytes. */
  static final int LARGEST_OBJECTS = 4 * 1024 * 1024;

  /** All pages of a record together. */
  static final long LARGEST_PAGES = 64L * 1024 * 1024;

  static final int MOST_PAGES = 5_000;

  /** More than any seal and any name has. */
  static final int LONGEST_TEXT = 256 * 1024;

  private static final COSName EMBEDDED = COSName.getPDFName("EmbeddedFile");
  private static final int PIECE = 64 * 1024;

  private final IdentityHashMap<COSStream, Long> lengths = new IdentityHashMap<>();
  private Optional<IOException> refusal = Optional.empty();
  private long total;

  BoundedParser(byte[] pdf) throws IOException {
    super(new RandomAccessReadBuffer(pdf));
  }

  /** Why something was refused, which PDFBox may have passed over. */
  void throwRefusal() throws IOException {
    if (refusal.isPresent()) {
      throw refusal.get();
    }
  }

  private void require(boolean sound, String found) throws IOException {
    if (!sound) {
      IOException refused = new IOException(found);
      refusal = refusal.or(() -> Optional.of(refused));
      throw refused;
    }
  }

  @Override
  protected COSStream parseCOSStream(COSDictionary dictionary) throws IOException {
    COSStream stream = super.parseCOSStream(dictionary);
    int largest = largest(dictionary);
    long length = unpacked(stream, largest);
    total += length;
    require(length <= largest, "a stream that unpacks to more than " + megabytes(largest));
    require(
        total <= AttachmentReader.LARGEST_ALL,
        "streams that unpack to more than " + megabytes(AttachmentReader.LARGEST_ALL));
    lengths.put(stream, length);
    return stream;
  }

  /** Streams of places and of objects are known by the keys that PDFBox needs to unpack them. */
  private static int largest(COSDictionary dictionary) {
    if (dictionary.containsKey(COSName.W)) {
      return LARGEST_PLACES;
    } else if (dictionary.containsKey(COSName.FIRST)) {
      return LARGEST_OBJECTS;
    }
    boolean isFile = EMBEDDED.equals(dictionary.getCOSName(COSName.TYPE));
    return isFile ? AttachmentReader.LARGEST : LARGEST;
  }

  private static String megabytes(long bytes) {
    return (bytes >> 20) + " MB";
  }

  @Override
  protected COSString parseCOSString() throws IOException {
    COSString text = super.parseCOSString();
    require(
        text.getBytes().length <= LONGEST_TEXT,
        "a text of more than " + (LONGEST_TEXT >> 10) + " kB");
    return text;
  }

  /** The length of a stream as it is read, counted without holding it. */
  private long unpacked(COSStream stream, int largest) throws IOException {
    COSBase filter = stream.getFilters();
    if (filter == null) {
      return stream.getLength();
    }
    require(
        filter == COSName.FLATE_DECODE && !stream.containsKey(COSName.DECODE_PARMS),
        "a stream packed as " + filter + ", which no record has");
    byte[] piece = new byte[PIECE];
    long length = 0;
    try (InputStream raw = stream.createRawInputStream();
        InputStream plain = new InflaterInputStream(raw)) {
      for (int read = 0; read >= 0 && length <= largest; read = plain.read(piece)) {
        length += read;
      }
    } catch (ZipException | EOFException damaged) {
      return length;
    }
    return length;
  }

  /** Many pages, and many parts of a page, may be one and the same stream. */
  void requirePages(PDDocument file) throws IOException {
    int pages = 0;
    long all = 0;
    for (PDPage page : file.getPages()) {
      long length = contents(page.getCOSObject().getDictionaryObject(COSName.CONTENTS));
      all += length;
      require(length <= LARGEST, "a page of more than " + megabytes(LARGEST));
      require(all <= LARGEST_PAGES, "pages of more than " + megabytes(LARGEST_PAGES));
      require(++pages <= MOST_PAGES, "more than " + MOST_PAGES + " pages");
    }
  }

  private long contents(COSBase contents) {
    long length = lengths.getOrDefault(contents, 0L);
    if (contents instanceof COSArray parts) {
      for (int i = 0; i < parts.size(); i++) {
        length += 1 + lengths.getOrDefault(parts.getObject(i), 0L);
      }
    }
    return length;
  }
}

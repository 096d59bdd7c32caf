package org.flitchbook.seal;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * A hash of what a file shows, carries and says. Objects are numbered in the order in which they
 * are come upon, and streams are unpacked, so that two files alike in everything but their bytes'
 * order and packing have the same.
 */
final class ContentHash {

  private static final int BUFFER = 1 << 16;

  private final Map<COSDictionary, Set<String>> exempt;
  private final Set<String> notFollowed;
  private final MessageDigest digest = sha256();
  private final Map<COSObjectKey, Integer> numbers = new HashMap<>();
  private final Deque<COSObject> waiting = new ArrayDeque<>();

  /**
   * @param exempt the keys that do not count, in these very dictionaries
   * @param notFollowed keys that do not count in any dictionary
   */
  private ContentHash(Map<COSDictionary, Set<String>> exempt, Set<String> notFollowed) {
    this.exempt = exempt;
    this.notFollowed = notFollowed;
  }

  /** Of a whole file, without what signing changes. */
  static String of(PDDocument file, Map<COSDictionary, Set<String>> exempt) throws IOException {
    COSDictionary trailer = file.getDocument().getTrailer();
    ContentHash hash = new ContentHash(exempt, Set.of());
    hash.write(trailer.getItem(COSName.ROOT));
    hash.write(trailer.getItem(COSName.INFO));
    return hash.value();
  }

  /** Of a part of it, which leads back to others by the keys that are not followed. */
  static String of(COSBase part, Map<COSDictionary, Set<String>> exempt, Set<String> notFollowed)
      throws IOException {
    ContentHash hash = new ContentHash(exempt, notFollowed);
    hash.write(part);
    return hash.value();
  }

  static String of(byte[] bytes) {
    return HexFormat.of().formatHex(sha256().digest(bytes));
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException missing) {
      throw new AssertionError("every Java platform has SHA-256", missing);
    }
  }

  private String value() throws IOException {
    while (!waiting.isEmpty()) {
      write(waiting.remove().getObject());
    }
    return HexFormat.of().formatHex(digest.digest());
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
    boolean isPacked = isPacked(dictionary);
    Set<String> left = exempt.getOrDefault(dictionary, Set.of());
    Map<String, COSBase> members = new TreeMap<>();
    for (COSName key : dictionary.keySet()) {
      boolean isLength = isPacked && key.equals(COSName.LENGTH);
      if (!isLength && !left.contains(key.getName()) && !notFollowed.contains(key.getName())) {
        members.put(key.getName(), dictionary.getItem(key));
      }
    }
    word("<" + members.size());
    for (Map.Entry<String, COSBase> member : members.entrySet()) {
      word(member.getKey());
      write(member.getValue());
    }
    if (dictionary instanceof COSStream stream) {
      write(stream, isPacked);
    }
  }

  private static boolean isPacked(COSDictionary dictionary) {
    return dictionary instanceof COSStream stream && stream.getFilters() == COSName.FLATE_DECODE;
  }

  private void write(COSStream stream, boolean isPacked) throws IOException {
    long length = 0;
    byte[] buffer = new byte[BUFFER];
    try (InputStream raw = stream.createRawInputStream();
        InputStream plain = isPacked ? new InflaterInputStream(raw) : raw) {
      for (int read = plain.read(buffer); read > 0; read = plain.read(buffer)) {
        digest.update(buffer, 0, read);
        length += read;
      }
    }
    word("stream of " + length);
  }

  private void word(String word) {
    digest.update(word.getBytes(StandardCharsets.UTF_8));
    digest.update((byte) 0);
  }
}

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
 * A hash of all that a file shows, carries and says, but for what signing in one field changes.
 * Objects are numbered in the order in which they are come upon, so that two files alike in
 * everything but their bytes' order have the same.
 */
final class ContentHash {
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

  static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException missing) {
      throw new AssertionError("every Java platform has SHA-256", missing);
    }
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

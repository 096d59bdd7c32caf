package org.flitchbook.seal;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Compares a file with a print, byte for byte but for how the streams are packed: another Java may
 * pack them otherwise. What follows from that may differ too, the stated lengths and places, and
 * must be right for the file itself.
 */
final class Repacking {

  private static final String STREAM = "\nstream\r\n";
  private static final String STREAM_END = "\r\nendstream";
  private static final Pattern LENGTH = Pattern.compile("(?<=\n/Length )\\d{1,9}(?=\n)");
  private static final Pattern START = Pattern.compile("(?<=\nstartxref\n)\\d{1,9}(?=\n)");
  private static final Pattern OBJECT = Pattern.compile("(?<=\n)(\\d{1,9}) 0 obj\n");

  private final Walk file;
  private final Walk print;

  private Repacking(byte[] file, byte[] print) {
    this.file = new Walk(file);
    this.print = new Walk(print);
  }

  /** Whether the file is that print. */
  static boolean isAll(byte[] file, byte[] print) {
    try {
      return new Repacking(file, print).isAlike();
    } catch (DataFormatException broken) {
      return false;
    }
  }

  private boolean isAlike() throws DataFormatException {
    while (print.hasStream()) {
      if (!file.hasStream() || !isSame(file.text(), print.text(), LENGTH)) {
        return false;
      }
      byte[] one = file.unpacked();
      byte[] other = print.unpacked();
      if (print.isOfPlaces() ? !isSamePlaces(one, other) : !Arrays.equals(one, other)) {
        return false;
      }
      file.next();
      print.next();
    }
    return !file.hasStream()
        && isSame(file.rest(), print.rest(), START)
        && find(START, file.rest()).equals(Optional.of(String.valueOf(file.lastObject)));
  }

  private static boolean isSame(String one, String other, Pattern number) {
    return number.matcher(one).replaceAll("0").equals(number.matcher(other).replaceAll("0"));
  }

  private static Optional<String> find(Pattern number, String text) {
    Matcher found = number.matcher(text);
    return found.find() ? Optional.of(found.group()) : Optional.empty();
  }

  /**
   * The places of the objects, in rows of six bytes: what kind, in three bytes where it lies, and
   * two more. Those of the file are where its objects are; all else is that of the print.
   */
  private boolean isSamePlaces(byte[] one, byte[] other) {
    if (one.length != other.length || one.length % Walk.ROW != 0) {
      return false;
    }
    for (int row = 0; row < one.length / Walk.ROW; row++) {
      boolean isPlace = other[row * Walk.ROW] == 1;
      if (isPlace ? !file.isAt(one, row) || !print.isAt(other, row) : !isSame(one, other, row)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isSame(byte[] one, byte[] other, int row) {
    int from = row * Walk.ROW;
    return Arrays.equals(one, from, from + Walk.ROW, other, from, from + Walk.ROW);
  }

  /** A way through a file from stream to stream. */
  private static final class Walk {

    static final int ROW = 6;
    private static final int PART = 1 << 16;

    private final byte[] bytes;
    private final String all;
    private final Map<Integer, Integer> places = new HashMap<>();
    private int from;
    private int stream;
    int lastObject;

    Walk(byte[] bytes) {
      this.bytes = bytes;
      this.all = new String(bytes, ISO_8859_1);
      look();
    }

    private void look() {
      stream = all.indexOf(STREAM, from);
      Matcher objects = OBJECT.matcher(all).region(from, stream < 0 ? all.length() : stream);
      objects.useTransparentBounds(true);
      while (objects.find()) {
        lastObject = objects.start();
        places.put(Integer.valueOf(objects.group(1)), lastObject);
      }
    }

    boolean hasStream() {
      return stream >= 0;
    }

    /** What stands before the stream, since the one before. */
    String text() {
      return all.substring(from, stream + STREAM.length());
    }

    String rest() {
      return all.substring(from);
    }

    private String dictionary() {
      return all.substring(lastObject, stream + 1);
    }

    boolean isOfPlaces() {
      return dictionary().contains("\n/Type /XRef\n") && dictionary().contains("\n/W [1 3 2]\n");
    }

    private int end() throws DataFormatException {
      int length =
          find(LENGTH, dictionary()).map(Integer::parseInt).orElseThrow(DataFormatException::new);
      int end = stream + STREAM.length() + length;
      if (!all.startsWith(STREAM_END, end)) {
        throw new DataFormatException();
      }
      return end;
    }

    /** The stream's bytes, unpacked where they are packed, with nothing behind them. */
    byte[] unpacked() throws DataFormatException {
      byte[] packed = Arrays.copyOfRange(bytes, stream + STREAM.length(), end());
      return dictionary().contains("\n/Filter /FlateDecode\n") ? inflated(packed) : packed;
    }

    private static byte[] inflated(byte[] packed) throws DataFormatException {
      Inflater inflater = new Inflater();
      try {
        inflater.setInput(packed);
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        byte[] part = new byte[PART];
        for (int length = inflater.inflate(part); length > 0; length = inflater.inflate(part)) {
          plain.write(part, 0, length);
        }
        if (!inflater.finished() || inflater.getRemaining() > 0) {
          throw new DataFormatException();
        }
        return plain.toByteArray();
      } finally {
        inflater.end();
      }
    }

    void next() throws DataFormatException {
      from = end();
      look();
    }

    /** Whether the object of a row lies where the row says. */
    boolean isAt(byte[] rows, int row) {
      int from = row * ROW + 1;
      int place =
          ((rows[from] & 0xff) << 16) | ((rows[from + 1] & 0xff) << 8) | (rows[from + 2] & 0xff);
      return rows[from - 1] == 1
          && rows[from + 3] == 0
          && rows[from + 4] == 0
          && Integer.valueOf(place).equals(places.get(row));
    }
  }
}

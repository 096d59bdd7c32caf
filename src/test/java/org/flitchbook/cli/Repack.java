package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.ByteArrayOutputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Deflater;
import java.util.zip.Inflater;

/** A print as another Java would write it, whose library packs streams otherwise. */
final class Repack {

  private static final Pattern OBJECT =
      Pattern.compile(
          "(\\d+) 0 obj\n(?:(<<\n/Length )(\\d+)(\n.*?>>\nstream\r\n))?", Pattern.DOTALL);

  private static final int ROW = 6;

  private Repack() {}

  static byte[] at(byte[] pdf, int level) throws DataFormatException {
    String all = new String(pdf, ISO_8859_1);
    StringBuilder out = new StringBuilder();
    Map<Integer, Integer> places = new HashMap<>();
    int from = 0;
    int last = 0;
    Matcher object = OBJECT.matcher(all);
    while (object.find(from)) {
      out.append(all, from, object.start());
      last = out.length();
      places.put(Integer.valueOf(object.group(1)), last);
      if (object.group(2) == null) {
        out.append(object.group());
        from = object.end();
        continue;
      }
      int end = object.end() + Integer.parseInt(object.group(3));
      String packed = all.substring(object.end(), end);
      if (object.group(4).contains("/FlateDecode")) {
        byte[] plain = inflated(packed.getBytes(ISO_8859_1));
        if (object.group(4).contains("/XRef")) {
          move(plain, places);
        }
        packed = deflated(plain, level);
      }
      out.append(object.group(1)).append(" 0 obj\n").append(object.group(2));
      out.append(packed.length()).append(object.group(4)).append(packed);
      from = end;
    }
    out.append(all.substring(from).replaceFirst("startxref\n\\d+", "startxref\n" + last));
    return out.toString().getBytes(ISO_8859_1);
  }

  private static void move(byte[] rows, Map<Integer, Integer> places) {
    for (int i = 0; i < rows.length; i += ROW) {
      if (rows[i] == 1) {
        int place = places.get(i / ROW);
        rows[i + 1] = (byte) (place >> 16);
        rows[i + 2] = (byte) (place >> 8);
        rows[i + 3] = (byte) place;
      }
    }
  }

  private static byte[] inflated(byte[] packed) throws DataFormatException {
    Inflater inflater = new Inflater();
    inflater.setInput(packed);
    ByteArrayOutputStream plain = new ByteArrayOutputStream();
    byte[] part = new byte[1 << 16];
    while (!inflater.finished()) {
      plain.write(part, 0, inflater.inflate(part));
    }
    inflater.end();
    return plain.toByteArray();
  }

  private static String deflated(byte[] plain, int level) {
    Deflater deflater = new Deflater(level);
    deflater.setInput(plain);
    deflater.finish();
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    byte[] part = new byte[1 << 16];
    while (!deflater.finished()) {
      packed.write(part, 0, deflater.deflate(part));
    }
    deflater.end();
    return packed.toString(ISO_8859_1);
  }
}

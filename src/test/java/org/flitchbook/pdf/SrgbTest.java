package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The profile in the program is the sRGB colour space (IEC 61966-2-1) as an ICC profile, version
 * 2.1: white point, the primaries adapted to D50, and the tone curve in 1024 steps. It is made
 * here, so that no licence and no platform code comes with it.
 */
final class SrgbTest {
  private static final int HEADER = 128;
  private static final int STEPS = 1024;
  private static final String CURVES = "rTRC gTRC bTRC";

  @Test
  void the_profile_is_what_the_standard_says() throws IOException {
    assertArrayEquals(profile(), Pdf.resource("srgb.icc"));
  }

  private static byte[] profile() {
    Map<String, byte[]> parts = new LinkedHashMap<>();
    parts.put("desc", description());
    parts.put("cprt", text("No copyright, use freely"));
    parts.put("wtpt", xyz(0.9642, 1.0, 0.8249));
    parts.put("rXYZ", xyz(0.43607, 0.22249, 0.01392));
    parts.put("gXYZ", xyz(0.38515, 0.71687, 0.09708));
    parts.put("bXYZ", xyz(0.14307, 0.06061, 0.71410));
    // The three tone curves are one and the same.
    parts.put(CURVES, curve());
    return assembled(parts);
  }

  private static byte[] assembled(Map<String, byte[]> parts) {
    int tags = parts.size() + 2;
    int dataAt = HEADER + 4 + 12 * tags;
    ByteBuffer table = ByteBuffer.allocate(dataAt - HEADER).putInt(tags);
    ByteArrayOutputStream data = new ByteArrayOutputStream();
    parts.forEach(
        (names, part) -> {
          for (String name : names.split(" ", -1)) {
            table.put(ascii(name)).putInt(dataAt + data.size()).putInt(part.length);
          }
          data.writeBytes(part);
        });
    int size = dataAt + data.size();
    ByteBuffer profile = ByteBuffer.allocate(size).put(header(size)).put(table.array());
    return profile.put(data.toByteArray()).array();
  }

  private static byte[] header(int size) {
    ByteBuffer header = ByteBuffer.allocate(HEADER).putInt(size).putInt(0).putInt(0x02100000);
    header.put(ascii("mntrRGB XYZ "));
    header.putShort((short) 2026).putShort((short) 1).putShort((short) 1);
    header.position(36);
    header.put(ascii("acsp"));
    header.position(68);
    return header.putInt(fixed(0.9642)).putInt(fixed(1.0)).putInt(fixed(0.8249)).array();
  }

  private static byte[] description() {
    byte[] name = ascii("sRGB IEC61966-2.1\0");
    ByteBuffer tag = ByteBuffer.allocate(padded(12 + name.length + 78)).put(ascii("desc"));
    return tag.putInt(0).putInt(name.length).put(name).array();
  }

  private static byte[] text(String words) {
    byte[] ascii = ascii(words + "\0");
    return ByteBuffer.allocate(padded(8 + ascii.length))
        .put(ascii("text"))
        .putInt(0)
        .put(ascii)
        .array();
  }

  private static byte[] xyz(double x, double y, double z) {
    ByteBuffer tag = ByteBuffer.allocate(20).put(ascii("XYZ ")).putInt(0);
    return tag.putInt(fixed(x)).putInt(fixed(y)).putInt(fixed(z)).array();
  }

  private static byte[] curve() {
    ByteBuffer tag = ByteBuffer.allocate(12 + 2 * STEPS).put(ascii("curv")).putInt(0).putInt(STEPS);
    for (int i = 0; i < STEPS; i++) {
      tag.putShort((short) Math.round(65535 * linear(i / (STEPS - 1.0))));
    }
    return tag.array();
  }

  /** IEC 61966-2-1: from the value stored to light. */
  private static double linear(double stored) {
    return stored <= 0.04045 ? stored / 12.92 : StrictMath.pow((stored + 0.055) / 1.055, 2.4);
  }

  private static int fixed(double value) {
    return (int) Math.round(value * 65536);
  }

  private static int padded(int length) {
    return (length + 3) / 4 * 4;
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}

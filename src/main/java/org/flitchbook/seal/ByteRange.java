package org.flitchbook.seal;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.flitchbook.message.Message.say;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSInteger;
import org.flitchbook.message.Message;

/**
 * The place of a signature in the file's bytes: a hexadecimal text between two angle brackets, and
 * nothing else. Readers of PDF skip what they don't understand there; here each byte counts.
 */
final class ByteRange {
  private static final int RANGES = 4;

  /** ASN.1's tag of a sequence, and the bit that says that a length has several octets. */
  private static final int SEQUENCE = 0x30;

  private static final int LONG = 0x80;
  private static final int MOST_LENGTH_OCTETS = 3;

  private final byte[] pdf;
  final List<Message> faults = new ArrayList<>();
  private int from;
  private int to;
  int end;
  ByteBuffer seal = ByteBuffer.allocate(0);

  ByteRange(byte[] pdf, COSArray range) {
    this.pdf = pdf;
    if (!isSound(range)) {
      faults.add(say("seal.signature.range", "it does not say rightly which bytes it covers"));
      return;
    }
    from = range.getInt(1);
    to = range.getInt(2);
    end = to + range.getInt(3);
    readSeal();
  }

  private boolean isSound(COSArray range) {
    if (range == null || range.size() != RANGES) {
      return false;
    }
    for (COSBase each : range) {
      if (!(each instanceof COSInteger number)
          || number.longValue() < 0
          || number.longValue() > pdf.length) {
        return false;
      }
    }
    return range.getInt(0) == 0
        && range.getInt(1) < range.getInt(2)
        && (long) range.getInt(2) + range.getInt(3) <= pdf.length;
  }

  /** Upper-case digits only: this program writes no others. */
  private void readSeal() {
    String place = new String(pdf, from, to - from, ISO_8859_1);
    if (place.length() % 2 != 0 || !place.matches("<[0-9A-F]*>")) {
      faults.add(
          say(
              "seal.signature.digits",
              "its place holds something else than the digits of a signature"));
      return;
    }
    byte[] bytes = HexFormat.of().parseHex(place, 1, place.length() - 1);
    int length = length(bytes);
    seal = ByteBuffer.wrap(bytes, 0, length).slice();
    if (IntStream.range(length, bytes.length).anyMatch(i -> bytes[i] != 0)) {
      faults.add(say("seal.signature.behind", "something stands behind it in its place"));
    }
  }

  /** The length of the structure at the begin, as its first octets say; 0 where they say none. */
  private static int length(byte[] bytes) {
    if (bytes.length < 2 + MOST_LENGTH_OCTETS || bytes[0] != SEQUENCE) {
      return 0;
    }
    int octets = bytes[1] & ~LONG & 0xff;
    if ((bytes[1] & LONG) == 0) {
      return Math.min(2 + octets, bytes.length);
    }
    int length = 0;
    for (int i = 0; i < Math.min(octets, MOST_LENGTH_OCTETS); i++) {
      length = (length << 8) | (bytes[2 + i] & 0xff);
    }
    return octets > MOST_LENGTH_OCTETS ? 0 : Math.min(2 + octets + length, bytes.length);
  }

  ByteBuffer before() {
    return ByteBuffer.wrap(pdf, 0, from).slice();
  }

  ByteBuffer after() {
    return ByteBuffer.wrap(pdf, to, end - to).slice();
  }
}

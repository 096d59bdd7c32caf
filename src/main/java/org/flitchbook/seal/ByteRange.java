package org.flitchbook.seal;

import static org.flitchbook.message.Message.say;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
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
    from = number(range, 1);
    to = number(range, 2);
    end = to + number(range, 3);
    readSeal();
  }

  private boolean isSound(COSArray range) {
    if (range == null || range.size() != RANGES) {
      return false;
    }
    for (int i = 0; i < RANGES; i++) {
      if (!(range.get(i) instanceof COSInteger number)
          || number.longValue() < 0
          || number.longValue() > pdf.length) {
        return false;
      }
    }
    return number(range, 0) == 0
        && number(range, 1) < number(range, 2)
        && (long) number(range, 2) + number(range, 3) <= pdf.length;
  }

  private static int number(COSArray range, int index) {
    return range.getInt(index);
  }

  private void readSeal() {
    byte[] bytes = new byte[Math.max(0, (to - from - 2) / 2)];
    boolean hexadecimal = pdf[from] == '<' && pdf[to - 1] == '>' && (to - from) % 2 == 0;
    for (int i = 0; i < bytes.length && hexadecimal; i++) {
      int high = digit(pdf[from + 1 + 2 * i]);
      int low = digit(pdf[from + 2 + 2 * i]);
      hexadecimal = high >= 0 && low >= 0;
      bytes[i] = (byte) ((high << 4) | low);
    }
    if (!hexadecimal) {
      faults.add(
          say(
              "seal.signature.digits",
              "its place holds something else than the digits of a signature"));
      return;
    }
    int length = length(bytes);
    seal = ByteBuffer.wrap(bytes, 0, length).slice();
    for (int i = length; i < bytes.length; i++) {
      if (bytes[i] != 0) {
        faults.add(say("seal.signature.behind", "something stands behind it in its place"));
        return;
      }
    }
  }

  /** Upper-case digits only: this program writes no others. */
  private static int digit(byte letter) {
    if (letter >= 'A' && letter <= 'F') {
      return letter - 'A' + 10;
    }
    return letter >= '0' && letter <= '9' ? letter - '0' : -1;
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

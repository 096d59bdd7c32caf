package org.flitchbook.table;

import java.io.IOException;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;

/**
 * Takes text from bytes piece by piece, and no more of one row than is allowed: without that bound
 * a quote that never closes would bring the whole file into memory.
 */
final class TextReader extends Reader {

  private final ByteBuffer bytes;
  private final ByteBuffer piece = ByteBuffer.allocate(8192).flip();
  private final CharsetDecoder decoder;
  private final CharBuffer ahead = CharBuffer.allocate(8192).flip();
  private long allowed = Long.MAX_VALUE;
  private boolean ended;

  /** More was read of one row than is allowed. */
  static final class RowTooLong extends IOException {
    private static final long serialVersionUID = 1L;

    RowTooLong() {
      super("row too long");
    }
  }

  TextReader(ByteBuffer bytes, Charset charset) {
    this.bytes = bytes;
    this.decoder =
        charset
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
  }

  /** How many letters may still be read until this is called again. */
  void allow(int letters) {
    allowed = letters;
  }

  @Override
  public int read(char[] target, int from, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    if (!fill()) {
      return -1;
    }
    int count = Math.min(length, ahead.remaining());
    allowed -= count;
    if (allowed < 0) {
      throw new RowTooLong();
    }
    ahead.get(target, from, count);
    return count;
  }

  /** The next letter without taking it; -1 at the end. */
  int peek() throws IOException {
    return fill() ? ahead.get(ahead.position()) : -1;
  }

  /** Passes over what is left of a line, its end included. */
  void skipLine() throws IOException {
    while (isInLine(read())) {}
  }

  /** What is left of a line; its end is passed over. */
  String line() throws IOException {
    StringBuilder line = new StringBuilder();
    for (int letter = read(); isInLine(letter); letter = read()) {
      line.append((char) letter);
    }
    return line.toString();
  }

  private boolean isInLine(int letter) throws IOException {
    if (letter == '\r' && peek() == '\n') {
      read();
    }
    return letter >= 0 && letter != '\n' && letter != '\r';
  }

  private boolean fill() throws IOException {
    while (!ahead.hasRemaining() && !ended) {
      ahead.clear();
      cutPiece();
      CoderResult result = decoder.decode(piece, ahead, !bytes.hasRemaining());
      if (result.isError() && ahead.position() == 0) {
        result.throwException();
      }
      ended = result.isUnderflow() && !bytes.hasRemaining();
      ahead.flip();
    }
    return ahead.hasRemaining();
  }

  /** Decoding is fast from memory only, and the bytes may lie on a disk. */
  private void cutPiece() {
    piece.compact();
    int count = Math.min(piece.remaining(), bytes.remaining());
    piece.put(bytes.slice(bytes.position(), count));
    bytes.position(bytes.position() + count);
    piece.flip();
  }

  /** The bytes stay where they are. */
  @Override
  public void close() {
    ended = true;
  }
}

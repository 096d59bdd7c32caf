package org.flitchbook.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.flitchbook.document.Text;

/**
 * The only way to a terminal, in UTF-8. Nothing passes that a terminal would obey instead of
 * showing it: control characters, line ends aside, and marks that turn the direction of writing.
 */
final class PrintableWriter extends PrintWriter {

  private static final String LINE_AGAIN = "\r\033[K";

  PrintableWriter(PrintStream stream) {
    super(stream, true, StandardCharsets.UTF_8);
  }

  @Override
  public void write(int letter) {
    write(Character.toString(letter));
  }

  @Override
  public void write(char[] letters, int from, int length) {
    write(new String(letters, from, length));
  }

  @Override
  public void write(String text, int from, int length) {
    String printable = Text.printable(text.substring(from, from + length).replace("\r\n", "\n"));
    super.write(printable, 0, printable.length());
  }

  /** Puts the next text in the place of the line that is being written. */
  void startLineAgain() {
    super.write(LINE_AGAIN, 0, LINE_AGAIN.length());
  }
}

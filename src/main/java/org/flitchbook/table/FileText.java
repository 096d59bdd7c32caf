package org.flitchbook.table;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;

/**
 * A file's bytes as text, and what is wrong with them as text. The text is never held as a whole: a
 * reader takes it from the bytes piece by piece.
 *
 * @param content the bytes behind the mark
 * @param marked whether a byte order mark says what encoding it is
 */
public record FileText(ByteBuffer content, Charset charset, boolean marked, List<Fault> faults) {

  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

  /** Those whose files may begin with a byte order mark, which is one letter of each. */
  private static final List<Charset> MARKED = List.of(UTF_8, UTF_16LE, UTF_16BE);

  /** Reads the bytes through once, so that a fault in the middle is known before the first row. */
  static FileText of(SourceFile file, Optional<Charset> stated) {
    Optional<Charset> mark = MARKED.stream().filter(each -> begins(file, each)).findFirst();
    Charset charset = mark.or(() -> stated).orElse(UTF_8);
    int length = mark.map(each -> mark(each).remaining()).orElse(0);
    ByteBuffer content = file.content().duplicate();
    content.position(content.position() + length);
    FileText text = new FileText(content, charset, mark.isPresent(), List.of());
    if (!file.content().hasRemaining()) {
      return text.broken(
          Place.of(file.name()),
          "empty file",
          say("table.empty", "an empty file"),
          say("table.some-rows", "a line of columns and rows under it"));
    }
    Check check = text.check();
    return mark.isEmpty() && stated.isEmpty() && check.unreadableLine() > 0
        ? text.asWindows(file.name(), check.unreadableLine())
        : text.checked(
            file.name(),
            check,
            say("table.not-of-charset", "bytes that are no {0}", charset.name()),
            say("table.of-charset", "{0} text", charset.name()));
  }

  private static boolean begins(SourceFile file, Charset charset) {
    int same = file.content().mismatch(mark(charset));
    return same < 0 || same >= mark(charset).remaining();
  }

  private static ByteBuffer mark(Charset charset) {
    return charset.encode("\uFEFF");
  }

  /** By its mark, else UTF-8 or UTF-16 where the bytes are that, else Windows-1252. */
  static FileText guessed(SourceFile file) {
    FileText text = of(file, Optional.empty());
    return Stream.of(UTF_16LE, UTF_16BE)
        .filter(wide -> text.faults.stream().anyMatch(fault -> fault.rule().equals("NUL byte")))
        .map(wide -> of(file, Optional.of(wide)))
        .filter(FileText::hasLines)
        .findFirst()
        .orElse(text);
  }

  /** Bytes by twos are letters of some kind nearly always; those of a text have lines, too. */
  private boolean hasLines() {
    char[] letters = new char[2048];
    try (TextReader reader = reader()) {
      return faults.isEmpty()
          && new String(letters, 0, Math.max(0, reader.read(letters))).indexOf('\n') >= 0;
    } catch (IOException impossible) {
      throw new UncheckedIOException("reading bytes in memory", impossible);
    }
  }

  private FileText asWindows(String name, int line) {
    FileText windows = new FileText(content, WINDOWS_1252, false, List.of());
    FileText checked =
        windows.checked(
            name,
            windows.check(),
            say("table.no-text", "bytes that are no text"),
            say("table.utf-8-or-windows", "UTF-8 or Windows-1252"));
    Fault note =
        Fault.note(
            "encoding",
            "",
            Place.of(name, line),
            say("table.encoding.found", "bytes that are no UTF-8"),
            say("table.encoding.expected", "UTF-8; read as Windows-1252"));
    return checked.isBroken() ? checked : new FileText(content, WINDOWS_1252, false, List.of(note));
  }

  private FileText checked(String name, Check check, Message found, Message expected) {
    if (check.unreadableLine() > 0) {
      return broken(Place.of(name, check.unreadableLine()), "encoding", found, expected);
    }
    return check.nulLine() > 0
        ? broken(
            Place.of(name, check.nulLine()),
            "NUL byte",
            say("table.nul", "a NUL byte"),
            say("table.text", "text"))
        : this;
  }

  private FileText broken(Place place, String rule, Message found, Message expected) {
    return new FileText(
        content, charset, marked, List.of(Fault.broken(rule, place, found, expected)));
  }

  /** Whether it is no text in any encoding that is known. */
  public boolean isBroken() {
    return faults.stream().anyMatch(fault -> fault.is(Severity.BROKEN));
  }

  /** Its encoding, as {@code logs.json} calls it. */
  public String encoding() {
    return charset.name().toLowerCase(Locale.ROOT);
  }

  /** The text from its beginning; what can't be decoded is a {@link CharacterCodingException}. */
  TextReader reader() {
    return new TextReader(content.duplicate(), charset);
  }

  /** On which lines the first letter stands that can't be decoded, and the first NUL; 0: none. */
  private record Check(int unreadableLine, int nulLine) {}

  private Check check() {
    LineCount lines = new LineCount();
    int nulLine = 0;
    try (TextReader reader = reader()) {
      char[] letters = new char[8192];
      for (int read = reader.read(letters); read >= 0; read = reader.read(letters)) {
        for (int i = 0; i < read; i++) {
          lines.take(letters[i]);
          nulLine = nulLine == 0 && letters[i] == 0 ? lines.line : nulLine;
        }
      }
      return new Check(0, nulLine);
    } catch (CharacterCodingException unreadable) {
      return new Check(lines.ended ? lines.line + 1 : lines.line, nulLine);
    } catch (IOException impossible) {
      throw new UncheckedIOException("reading bytes in memory", impossible);
    }
  }

  /** Counts physical lines from 1; a line ends at LF, at CR LF, or at CR alone. */
  private static final class LineCount {

    /** The line on which the letter taken last stands, its end included. */
    private int line = 1;

    private boolean ended;
    private boolean afterCr;

    void take(char letter) {
      boolean secondHalf = afterCr && letter == '\n';
      line += ended && !secondHalf ? 1 : 0;
      ended = letter == '\n' || letter == '\r';
      afterCr = letter == '\r';
    }
  }
}

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
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;

/**
 * A file's bytes as text, and what is wrong with them as text. The text is never held as a whole: a
 * reader takes it from the bytes piece by piece.
 *
 * @param content the bytes behind the mark
 */
record Text(ByteBuffer content, Charset charset, boolean marked, List<Fault> faults) {

  static final Charset WINDOWS_1252 = Charset.forName("windows-1252");

  private static final Map<String, Charset> NAMES =
      Map.of(
          "utf-8", UTF_8,
          "utf-16", UTF_16LE,
          "utf-16le", UTF_16LE,
          "utf-16be", UTF_16BE,
          "windows-1252", WINDOWS_1252,
          "iso-8859-1", Charset.forName("iso-8859-1"));

  static Optional<Charset> charset(String name) {
    return Optional.ofNullable(NAMES.get(name.toLowerCase(Locale.ROOT)));
  }

  /** Reads the bytes through once, so that a fault in the middle is known before the first row. */
  static Text of(SourceFile file, Optional<Charset> stated) {
    Mark mark = Mark.of(file.content());
    Charset charset = mark.charset().or(() -> stated).orElse(UTF_8);
    Text text =
        new Text(mark.behind(file.content()), charset, mark.charset().isPresent(), List.of());
    if (!file.content().hasRemaining()) {
      return text.broken(
          Place.of(file.name()),
          "empty file",
          say("table.empty", "an empty file"),
          say("table.some-rows", "a line of columns and rows under it"));
    }
    boolean open = mark.charset().isEmpty() && stated.isEmpty();
    Check check = text.check();
    return open && check.unreadableLine() > 0
        ? text.asWindows(file.name(), check.unreadableLine())
        : text.checked(file.name(), check);
  }

  private Text asWindows(String name, int line) {
    Text windows = new Text(content, WINDOWS_1252, false, List.of());
    Check check = windows.check();
    if (check.unreadableLine() > 0) {
      Place place = Place.of(name, check.unreadableLine());
      return broken(
          place,
          "encoding",
          say("table.no-text", "bytes that are no text"),
          say("table.utf-8-or-windows", "UTF-8 or Windows-1252"));
    }
    Text checked = windows.checked(name, check);
    Fault note =
        Fault.note(
            "encoding",
            "",
            Place.of(name, line),
            say("table.encoding.found", "bytes that are no UTF-8"),
            say("table.encoding.expected", "UTF-8; read as Windows-1252"));
    return checked.faults().isEmpty()
        ? new Text(content, WINDOWS_1252, false, List.of(note))
        : checked;
  }

  private Text checked(String name, Check check) {
    if (check.unreadableLine() > 0) {
      Place place = Place.of(name, check.unreadableLine());
      return broken(
          place,
          "encoding",
          say("table.not-of-charset", "bytes that are no {0}", charset.name()),
          say("table.of-charset", "{0} text", charset.name()));
    }
    return check.nulLine() > 0
        ? broken(
            Place.of(name, check.nulLine()),
            "NUL byte",
            say("table.nul", "a NUL byte"),
            say("table.text", "text"))
        : this;
  }

  private Text broken(Place place, String rule, Message found, Message expected) {
    return new Text(content, charset, marked, List.of(Fault.broken(rule, place, found, expected)));
  }

  /** The text from its beginning; what can't be decoded is a {@link CharacterCodingException}. */
  TextReader reader() {
    return new TextReader(content.duplicate(), charset);
  }

  /** The first letters of a text that is known to be one. */
  String begins() {
    try (TextReader reader = reader()) {
      char[] letters = new char[2048];
      int read = reader.read(letters);
      return new String(letters, 0, Math.max(0, read));
    } catch (IOException impossible) {
      throw new UncheckedIOException("reading bytes in memory", impossible);
    }
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
          nulLine = nulLine == 0 && letters[i] == 0 ? lines.line() : nulLine;
        }
      }
      return new Check(0, nulLine);
    } catch (CharacterCodingException unreadable) {
      return new Check(lines.lineOfNext(), nulLine);
    } catch (IOException impossible) {
      throw new UncheckedIOException("reading bytes in memory", impossible);
    }
  }

  /** The byte order mark at a file's start, if it has one. */
  private record Mark(Optional<Charset> charset, int length) {

    static Mark of(ByteBuffer bytes) {
      if (starts(bytes, 0xEF, 0xBB, 0xBF)) {
        return new Mark(Optional.of(UTF_8), 3);
      }
      if (starts(bytes, 0xFF, 0xFE)) {
        return new Mark(Optional.of(UTF_16LE), 2);
      }
      if (starts(bytes, 0xFE, 0xFF)) {
        return new Mark(Optional.of(UTF_16BE), 2);
      }
      return new Mark(Optional.empty(), 0);
    }

    private static boolean starts(ByteBuffer bytes, int... mark) {
      for (int i = 0; i < mark.length; i++) {
        int at = bytes.position() + i;
        if (at >= bytes.limit() || (bytes.get(at) & 0xFF) != mark[i]) {
          return false;
        }
      }
      return true;
    }

    ByteBuffer behind(ByteBuffer bytes) {
      ByteBuffer content = bytes.duplicate();
      content.position(content.position() + length);
      return content;
    }
  }
}

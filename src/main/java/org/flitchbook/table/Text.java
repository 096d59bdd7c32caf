package org.flitchbook.table;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;

/** A file's bytes as text, and what is wrong with them as text. */
record Text(String content, List<Fault> faults) {

  private static final Charset WINDOWS_1252 = Charset.forName("windows-1252");
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

  static Text decode(String name, byte[] bytes, Optional<Charset> stated) {
    if (bytes.length == 0) {
      return broken(name, 0, "empty file", "an empty file", "a line of columns and rows under it");
    }
    Mark mark = Mark.of(bytes);
    Charset charset = mark.charset().or(() -> stated).orElse(UTF_8);
    Optional<String> text = strictly(bytes, mark.length(), charset);
    if (text.isEmpty() && mark.charset().isEmpty() && stated.isEmpty()) {
      return asWindows(name, bytes);
    }
    return text.map(content -> checked(name, content))
        .orElseGet(
            () -> broken(name, 0, "encoding", "bytes that are no " + charset, charset + " text"));
  }

  private static Text asWindows(String name, byte[] bytes) {
    return strictly(bytes, 0, WINDOWS_1252)
        .map(content -> checked(name, content).and(name))
        .orElseGet(
            () -> broken(name, 0, "encoding", "bytes that are no text", "UTF-8 or Windows-1252"));
  }

  private Text and(String name) {
    Fault note =
        Fault.note(
            "encoding",
            "",
            Place.of(name),
            "bytes that are no UTF-8",
            "UTF-8; read as Windows-1252");
    return faults.isEmpty() ? new Text(content, List.of(note)) : this;
  }

  private static Optional<String> strictly(byte[] bytes, int from, Charset charset) {
    try {
      return Optional.of(
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes, from, bytes.length - from))
              .toString());
    } catch (CharacterCodingException notThisCharset) {
      return Optional.empty();
    }
  }

  private static Text checked(String name, String content) {
    int nul = content.indexOf('\0');
    if (nul < 0) {
      return new Text(content, List.of());
    }
    return broken(name, Lines.lineOf(content, nul), "NUL byte", "a NUL byte", "text");
  }

  private static Text broken(String name, int line, String rule, String found, String expected) {
    return new Text("", List.of(Fault.broken(rule, Place.of(name, line), found, expected)));
  }

  /** The byte order mark at a file's start, if it has one. */
  private record Mark(Optional<Charset> charset, int length) {

    static Mark of(byte[] bytes) {
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

    private static boolean starts(byte[] bytes, int... mark) {
      for (int i = 0; i < mark.length; i++) {
        if (i >= bytes.length || (bytes[i] & 0xFF) != mark[i]) {
          return false;
        }
      }
      return true;
    }
  }
}

package org.flitchbook.table;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.flitchbook.message.Message.say;

import java.nio.ByteBuffer;
import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;

/** Says of a file that is no table what it is, with the first line that shows it. */
final class OtherFormat {

  /** So many bytes, and so many lines of them, show what a file is. */
  private static final int BYTES = 16_384;

  private static final int LINES = 40;

  /** So many letters of a line are looked at: its begin shows what it is. */
  private static final int LETTERS = 2_000;

  /** So many letters of a line are shown. */
  private static final int SHOWN = 60;

  private static final String LINE_END = "\r\n|\n|\r";

  private static final byte[] ARCHIVE = {'P', 'K', 3, 4};

  private static final Message AS_CSV =
      say(
          "table.no.as-csv",
          "rows of cells parted by comma, semicolon or tab: choose CSV where the log is exported");

  /**
   * What else a text may be; the first that fits most of its lines counts. No pattern goes back
   * over what it has read in more than one way, or a line made for that would hold it up for years.
   */
  private enum Kind {
    MARKUP("(?i)<[?!/]?[a-z][^<]*>.*", say("table.no.markup", "a web page or XML")),
    JSON_LINES("\\{.*?\"\\s*+:.*", say("table.no.json-lines", "JSON, one object a line")),
    JSON(
        "[\\[\\]{}][,\\[\\]{}]*|\"[^\"]*\"\\s*:.*|\\[\\s*[\\[{\"].*", say("table.no.json", "JSON")),
    KEYS(
        "(?:[\\pL_][\\w.-]*+[=:] ?[^\\s,;]++(?:[,;\\s]++|$)){2,}+|\\S++ [\\pL_]\\w*+=\\S.*",
        say("table.no.keys", "a key and its value in each cell")),
    LINES_BETWEEN(
        "(?=[^|,;\\t]*\\d)[^|,;\\t]*+(?:\\|[^|]*+)++", say("table.no.pipes", "cells between |")),
    SPACES(
        "\\d[-+\\d./:TZ]*+(?: ++[-+]?\\d[\\d.:]*+){2,}+|\\d{10,13} ++[-+]?\\d[\\d.]*+",
        say("table.no.spaces", "cells parted by spaces")),
    SENTENCES(".*?\\pL[ ,:]++\\pL++ .*", say("table.no.sentences", "sentences"));

    final Pattern line;
    final Message found;

    Kind(String line, Message found) {
      this.line = Pattern.compile(line);
      this.found = found;
    }

    boolean fits(String text) {
      return line.matcher(text).matches();
    }
  }

  /** Those that are no table even where some of their lines look like one. */
  private static final Set<Kind> NEVER_ROWS =
      EnumSet.of(Kind.MARKUP, Kind.JSON_LINES, Kind.JSON, Kind.KEYS);

  private record Line(int number, String text) {}

  private OtherFormat() {}

  /** Why a file is no text, empty where it is one. */
  static Optional<Fault> ofBytes(SourceFile file, FileText text) {
    byte[] begin = new byte[ARCHIVE.length];
    ByteBuffer content = file.content().duplicate();
    if (content.remaining() > begin.length && isArchive(content, begin)) {
      return refused(
          Place.of(file.name(), 1),
          say("table.no.archive", "a spreadsheet or another archive, packed"),
          say("table.no.unpack", "text: open it, and save the sheet of the log as CSV"));
    }
    return text.isBroken()
        ? Optional.of(binary(file).orElse(text.faults().get(0)))
        : Optional.empty();
  }

  /** By a byte that no text has, whatever else in it is none. */
  private static Optional<Fault> binary(SourceFile file) {
    String bytes = ISO_8859_1.decode(file.content().duplicate()).toString();
    int nul = bytes.indexOf(0);
    return nul < 0
        ? Optional.empty()
        : refused(
            Place.of(file.name(), bytes.substring(0, nul).split(LINE_END, -1).length),
            say("table.no.binary", "a NUL byte, as in a file of the logger's own"),
            say("table.no.export", "text: choose CSV where the log is exported"));
  }

  private static boolean isArchive(ByteBuffer content, byte[] begin) {
    content.get(begin);
    return Arrays.equals(begin, ARCHIVE);
  }

  /**
   * What a text is that is no table, by its lines.
   *
   * @param isLikeTable whether rows of times and numbers were found in it; then only what is never
   *     a table is refused
   */
  static Optional<Fault> ofText(SourceFile file, FileText text, boolean isLikeTable) {
    List<Line> lines = lines(text.content().duplicate(), text.charset());
    return Stream.of(Kind.values())
        .filter(kind -> !isLikeTable || NEVER_ROWS.contains(kind))
        .flatMap(kind -> refused(file.name(), kind, lines).stream())
        .findFirst();
  }

  private static List<Line> lines(ByteBuffer content, Charset charset) {
    content.limit(content.position() + Math.min(content.remaining(), BYTES));
    String[] texts = charset.decode(content).toString().split(LINE_END, -1);
    return IntStream.range(0, texts.length)
        .mapToObj(index -> new Line(index + 1, cut(texts[index].strip(), LETTERS)))
        .filter(line -> !line.text().isEmpty())
        .limit(LINES)
        .toList();
  }

  private static Optional<Fault> refused(String file, Kind kind, List<Line> lines) {
    List<Line> fitting = lines.stream().filter(line -> kind.fits(line.text())).toList();
    if (fitting.size() * 2 <= lines.size()) {
      return Optional.empty();
    }
    Line first = fitting.get(0);
    return refused(
        Place.of(file, first.number()),
        say("table.no.shown", "{0}: {1}", kind.found, shown(first.text())),
        AS_CSV);
  }

  private static String cut(String text, int letters) {
    return text.substring(0, Math.min(letters, text.length()));
  }

  private static String shown(String text) {
    return text.length() <= SHOWN ? text : cut(text, SHOWN).strip() + " …";
  }

  private static Optional<Fault> refused(Place place, Message found, Message expected) {
    return Optional.of(Fault.broken("no table", place, found, expected));
  }
}

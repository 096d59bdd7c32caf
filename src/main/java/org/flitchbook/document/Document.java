package org.flitchbook.document;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.words.Words;

/**
 * A whole document, ready for any printer.
 *
 * @param title printed large at the top of the first page and put in the file's metadata; not blank
 * @param subject printed small under the title and put in the file's metadata; may be empty
 * @param words the language, and the fixed wording that printers add
 * @param id a stable id, not blank: the same document with the same id prints to the same bytes
 * @param made the date put in the file's metadata; a printer never asks a clock
 * @param paper the sheet to print on
 * @param running what stands at the head and foot of each page
 * @param code what stands beside the title, on the first page
 * @param blocks the content, in reading order; not empty
 */
public record Document(
    String title,
    String subject,
    Words words,
    String id,
    Instant made,
    Paper paper,
    Running running,
    Optional<Code> code,
    List<Block> blocks) {

  /** The narrowest terminal that {@link #toText} sets text for, in characters. */
  public static final int LEAST_WIDTH = 40;

  public Document {
    Require.notBlank("document title", title);
    Require.notBlank("document id", id);
    blocks = List.copyOf(blocks);
    Require.notEmpty("document", blocks);
  }

  /**
   * The same document as plain text for a terminal: tables aligned and wrapped, headings
   * underlined, signatures as lines, charts by their alternative text. Lines end with a line feed
   * and carry no trailing spaces.
   *
   * @param width characters a line, at least {@value #LEAST_WIDTH}; a table too wide for it is
   *     printed row by row, each cell on a line under its head
   */
  public String toText(int width) {
    Require.between("text width", width, LEAST_WIDTH, 1000);
    return new PlainText(words, width).print(this);
  }

  /** A sheet, upright. Width and height are in points, 72 to the inch. */
  public enum Paper {
    /** 8.5 by 11 inches. */
    LETTER(612, 792),
    /** 210 by 297 millimetres, to a hundredth of a point. */
    A4(595.28, 841.89);

    private final double width;
    private final double height;

    Paper(double width, double height) {
      this.width = width;
      this.height = height;
    }

    public double width() {
      return width;
    }

    public double height() {
      return height;
    }

    /** The paper of that name in any case, or empty. */
    public static Optional<Paper> parse(String name) {
      String wanted = name.strip().toUpperCase(Locale.ROOT);
      return Arrays.stream(values()).filter(paper -> paper.name().equals(wanted)).findFirst();
    }
  }

  /**
   * What stands on each page: a line at the head, left and right, and one at the foot. The printer
   * adds "page n of N" to the right of the foot. Any part may be empty; a long part is wrapped.
   */
  public record Running(String left, String right, String footLeft, String footRight) {}

  /**
   * A code for cameras, and the same in words for people.
   *
   * @param rows of its modules from the top, {@code #} where one is dark; as many as each is long
   * @param alternative what it holds, for those who can't see it; not blank
   * @param lines beside it, short
   */
  public record Code(List<String> rows, String alternative, List<String> lines) {
    public Code {
      rows = List.copyOf(rows);
      lines = List.copyOf(lines);
      Require.notEmpty("rows of a code", rows);
      Require.notBlank("alternative of a code", alternative);
      Require.notEmpty("lines beside a code", lines);
      int size = rows.size();
      if (rows.stream().anyMatch(row -> row.length() != size)) {
        throw new IllegalArgumentException("a code is as wide as high: " + rows);
      }
    }
  }
}

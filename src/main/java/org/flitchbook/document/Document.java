package org.flitchbook.document;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * A whole document, ready for any printer.
 *
 * @param title printed large at the top of the first page and put in the file's metadata; not blank
 * @param subject printed small under the title and put in the file's metadata; may be empty
 * @param language a BCP 47 tag such as {@code en-US}
 * @param id a stable id, not blank: the same document with the same id prints to the same bytes
 * @param made the date put in the file's metadata; a printer never asks a clock
 * @param paper the sheet to print on
 * @param running what stands at the head and foot of each page
 * @param blocks the content, in reading order; not empty
 */
public record Document(
    String title,
    String subject,
    String language,
    String id,
    Instant made,
    Paper paper,
    Running running,
    List<Block> blocks) {

  private static final Pattern LANGUAGE = Pattern.compile("[A-Za-z]{2,3}(-[A-Za-z0-9]{1,8})*");

  /** The narrowest terminal that {@link #toText} sets text for, in characters. */
  public static final int LEAST_WIDTH = 40;

  public Document {
    Demand.words("document title", title);
    Objects.requireNonNull(subject, "document subject");
    if (!LANGUAGE.matcher(language).matches()) {
      throw new IllegalArgumentException("document language is no BCP 47 tag: " + language);
    }
    Demand.words("document id", id);
    Objects.requireNonNull(made, "document date");
    Objects.requireNonNull(paper, "document paper");
    Objects.requireNonNull(running, "running head and foot");
    blocks = List.copyOf(blocks);
    Demand.some("document", blocks);
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
    Demand.between("text width", width, LEAST_WIDTH, 1000);
    return new PlainText(width).print(this);
  }
}

package org.flitchbook.document;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
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
    List<Block> blocks) {

  /** The narrowest terminal that {@link #toText} sets text for, in characters. */
  public static final int LEAST_WIDTH = 40;

  public Document {
    Demand.words("document title", title);
    Objects.requireNonNull(subject, "document subject");
    Objects.requireNonNull(words, "document wording");
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
    return new PlainText(words, width).print(this);
  }
}

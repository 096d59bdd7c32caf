package org.flitchbook.table;

/** Takes the rows of a table one by one, so that a long log is never held as text. */
public interface Rows {

  /** Called once, first, with the heading's words. */
  void heading(Row heading, char delimiter);

  /** Called for each line before the heading that the layout passes over, once the heading is. */
  default void skipped(Row row) {}

  /** Called for each row that is not blank, in the file's order. */
  void row(Row row);

  /** Whether no more rows are wanted; the rest of the file is then left alone. */
  default boolean haveEnough() {
    return false;
  }
}

package org.flitchbook.reading;

/**
 * What became of one file.
 *
 * @param use "sheet", "log", "layout of logs", "plan" or "not read"
 * @param rows the rows under the heading
 * @param used the rows of which something was used
 */
public record FileRead(String name, String use, long bytes, String sha256, int rows, int used) {

  static final String NOT_READ = "not read";

  /** Whether anybody looked into it. */
  public boolean isRead() {
    return !use.equals(NOT_READ);
  }
}

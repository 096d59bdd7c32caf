package org.flitchbook.reading;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;

/**
 * What became of one file.
 *
 * @param use "sheet", "log", "layout of logs", "plan" or "not read"
 * @param rows the rows under the heading
 * @param used the rows of which something was used
 */
public record FileRead(String name, String use, long bytes, String sha256, int rows, int used) {

  static final String NOT_READ = "not read";

  static FileRead of(SourceFile file, String use, int rows, int used) {
    return new FileRead(file.name(), use, file.content().remaining(), file.sha256(), rows, used);
  }

  /** Whether anybody looked into it. */
  public boolean isRead() {
    return !use.equals(NOT_READ);
  }

  /** What was found in it. */
  record Content(FileRead file, List<Entry> entries, List<Series> series, List<Fault> faults) {}
}

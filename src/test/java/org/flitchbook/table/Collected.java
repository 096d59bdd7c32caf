package org.flitchbook.table;

import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;

/** The rows and faults of one table as lines of text, for the tests. */
final class Collected implements Rows {

  static final String FILE = "2026-02-16/cure.csv";

  private final List<String> rows = new ArrayList<>();
  private final List<String> skipped = new ArrayList<>();
  private final List<Fault> faults;
  private char delimiter;
  private int count;
  private String last = "";

  private Collected(byte[] bytes, Layout layout) {
    faults = Tables.read(SourceFile.of(FILE, bytes), layout, this);
  }

  static Collected of(String text, Charset charset) {
    return new Collected(text.getBytes(charset), Layout.OPEN);
  }

  static Collected of(byte[] bytes, Layout layout) {
    return new Collected(bytes, layout);
  }

  static Layout stated(String charset) {
    return new Layout(Tables.charset(charset), Optional.empty(), 0);
  }

  @Override
  public void heading(Row heading, char found) {
    delimiter = found;
    rows.add(shown(heading));
  }

  @Override
  public void skipped(Row row) {
    skipped.add(shown(row));
  }

  @Override
  public void row(Row row) {
    count++;
    last = shown(row);
    if (count <= 100) {
      rows.add(last);
    }
  }

  private static String shown(Row row) {
    return row.line() + ": " + String.join(" | ", row.cells());
  }

  char delimiter() {
    return delimiter;
  }

  /** {@code line: cell | cell}, the heading first; the first hundred rows at most. */
  List<String> rows() {
    return rows;
  }

  /** The lines that were passed over, like {@link #rows}. */
  List<String> skipped() {
    return skipped;
  }

  int count() {
    return count;
  }

  String last() {
    return last;
  }

  /** {@code severity file:line:column: found X, expected Y}. */
  List<String> said() {
    return faults.stream().map(fault -> fault.severity().word() + " " + fault).toList();
  }
}

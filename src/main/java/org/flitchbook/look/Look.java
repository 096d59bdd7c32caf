package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Language;
import org.flitchbook.table.Encoding;
import org.flitchbook.table.Tables;

/**
 * Looks at a log as it was exported. What the file shows is said; what it can't show is left as a
 * question, which the reader of logs refuses until somebody has answered it.
 */
public final class Look {
  private Look() {}

  /** Looks at one file, whatever is in it. */
  public static LookResult at(SourceFile file, Language language) {
    Encoding encoding = Tables.encoding(file);
    if (!encoding.faults().isEmpty()) {
      return nothing(encoding.faults());
    }
    Optional<LogTable> table = LogTable.of(file, encoding);
    if (table.isEmpty()) {
      return nothing(
          List.of(
              Fault.broken(
                  "no table",
                  Place.of(file.name()),
                  say("look.no-table.found", "no rows of times and numbers under a heading"),
                  say(
                      "look.no-table.expected",
                      "a log as the logger exports it, parted by comma, semicolon or tab"))));
    }
    LogScan scan = new LogScan(table.get());
    List<Fault> faults = Tables.read(file, table.get().layout(), scan);
    if (scan.rows() == 0) {
      return nothing(faults);
    }
    Report report = new Report(file, encoding, table.get(), scan, faults, language);
    return new LookResult(report.text(), report.tree(), List.of());
  }

  private static LookResult nothing(List<Fault> faults) {
    return new LookResult("", Map.of(), faults);
  }
}

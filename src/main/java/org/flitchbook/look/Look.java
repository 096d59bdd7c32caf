package org.flitchbook.look;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Language;
import org.flitchbook.table.FileText;
import org.flitchbook.table.Tables;

/**
 * Looks at a log as it was exported. What the file shows is said; what it can't show is left as a
 * question, which the reader of logs refuses until somebody has answered it.
 */
public final class Look {
  private Look() {}

  /**
   * What was seen in a file.
   *
   * @param text for people; empty where no table was found
   * @param tree the same for programs, as maps, lists, texts and numbers
   * @param faults why no table was found; else none
   */
  public record Result(String text, Map<String, Object> tree, List<Fault> faults) {

    public Result {
      faults = List.copyOf(faults);
    }
  }

  /** Looks at one file, whatever is in it. */
  public static Result at(SourceFile file, Language language) {
    FileText text = Tables.encoding(file);
    if (text.isBroken()) {
      return nothing(text.faults());
    }
    Optional<LogTable> table = LogTable.of(file, text.charset());
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
    EntryProposal proposal = new EntryProposal(file.baseName(), text, table.get(), scan, language);
    Report report =
        new Report(file, text, table.get(), scan, language, proposal, Oddities.of(scan, faults));
    return new Result(report.text(), report.tree(), List.of());
  }

  private static Result nothing(List<Fault> faults) {
    return new Result("", Map.of(), faults);
  }
}

package org.flitchbook.look;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.table.Encoding;
import org.flitchbook.table.Tables;

/**
 * Looks at a log as it was exported. What the file shows is told; what it can't show is left as a
 * question, which the reader of logs refuses until somebody has answered it.
 */
public final class Look {

  /** How a text begins that is a question and no answer. */
  public static final String QUESTION = "? ";

  private Look() {}

  /** Looks at one file, whatever is in it. */
  public static Seen at(SourceFile file) {
    Encoding encoding = Tables.encoding(file);
    if (!encoding.faults().isEmpty()) {
      return nothing(encoding.faults());
    }
    Optional<Frame> frame = Frame.of(file, encoding);
    if (frame.isEmpty()) {
      return nothing(
          List.of(
              Fault.broken(
                  "no table",
                  Place.of(file.name()),
                  "no rows of times and numbers under a heading",
                  "a log as the logger exports it, parted by comma, semicolon or tab")));
    }
    Survey survey = new Survey(frame.get());
    List<Fault> faults = Tables.read(file, frame.get().layout(), survey);
    if (survey.rows() == 0) {
      return nothing(faults);
    }
    Proposal proposal = new Proposal(file.baseName(), encoding, frame.get(), survey);
    Report report = new Report(file, encoding, frame.get(), survey, proposal, faults);
    return new Seen(report.text(), report.tree(), List.of());
  }

  private static Seen nothing(List<Fault> faults) {
    return new Seen("", Map.of(), faults);
  }
}

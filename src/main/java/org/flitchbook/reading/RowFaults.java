package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.message.Message;

/**
 * Collects what is wrong with the rows of one log. Rows that follow each other with the same fault
 * are told together, with the first and last line, so that an hour of them is one sentence and
 * every line is still named.
 */
final class RowFaults {

  /** Rows told together, from one line to another. */
  private record Run(int first, int last, int rows, Message found) {

    boolean isBeside(int line) {
      return line == last + 1 || line == first - 1;
    }

    Run and(int line) {
      return new Run(Math.min(first, line), Math.max(last, line), rows + 1, found);
    }
  }

  private record Kind(String rule, Severity severity, String column, Message expected) {}

  private final String file;
  private final Map<Kind, List<Run>> runs = new LinkedHashMap<>();

  RowFaults(String file) {
    this.file = file;
  }

  void add(
      String rule, Severity severity, int line, String column, Message found, Message expected) {
    add(new Kind(rule, severity, column, expected), line, found, false);
  }

  /**
   * The same for what is told once, whatever rows stand between: which they are shows by itself.
   */
  void addUp(
      String rule, Severity severity, int line, String column, Message found, Message expected) {
    add(new Kind(rule, severity, column, expected), line, found, true);
  }

  private void add(Kind kind, int line, Message found, boolean together) {
    List<Run> known = runs.computeIfAbsent(kind, first -> new ArrayList<>());
    int last = known.size() - 1;
    if (last >= 0 && (together || known.get(last).isBeside(line))) {
      known.set(last, known.get(last).and(line));
    } else {
      known.add(new Run(line, line, 1, found));
    }
  }

  List<Fault> faults() {
    List<Fault> faults = new ArrayList<>();
    runs.forEach((kind, each) -> each.forEach(run -> faults.add(fault(kind, run))));
    return faults;
  }

  private Fault fault(Kind kind, Run run) {
    Message found =
        run.rows() == 1
            ? run.found()
            : say(
                "reading.rows",
                "{0} ({1} rows, lines {2} to {3})",
                run.found(),
                run.rows(),
                run.first(),
                run.last());
    Place place = new Place(file, run.first(), kind.column());
    return new Fault(kind.rule(), kind.severity(), "", place, found, kind.expected());
  }
}

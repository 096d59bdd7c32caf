package org.flitchbook.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;

/**
 * Collects what is wrong with the rows of one log. Rows that follow each other with the same fault
 * are told together, with the first and last line, so that an hour of them is one sentence and
 * every line is still named.
 */
final class RowFaults {

  /** Values that may stand between two lines told together. */
  private record Run(int first, int last, int rows, String found) {}

  private record Kind(String rule, Severity severity, String column, String expected) {}

  private final String file;
  private final Map<Kind, List<Run>> runs = new LinkedHashMap<>();

  RowFaults(String file) {
    this.file = file;
  }

  void add(String rule, Severity severity, int line, String column, String found, String expected) {
    List<Run> known =
        runs.computeIfAbsent(new Kind(rule, severity, column, expected), kind -> new ArrayList<>());
    Run last = known.isEmpty() ? null : known.get(known.size() - 1);
    if (last != null && last.last() == line - 1) {
      known.set(known.size() - 1, new Run(last.first(), line, last.rows() + 1, last.found()));
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
    String more =
        run.rows() == 1
            ? ""
            : " (" + run.rows() + " rows, lines " + run.first() + " to " + run.last() + ")";
    return new Fault(
        kind.rule(),
        kind.severity(),
        "",
        new Place(file, run.first(), kind.column()),
        run.found() + more,
        kind.expected());
  }
}

package org.flitchbook.reading;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.words.Words;

/**
 * What is wrong with the text of a table, as a record tells it: what breaks the reading never
 * reaches one, and the one note is that of an encoding.
 */
final class TableFaults {

  private TableFaults() {}

  static List<Fault> told(List<Fault> faults, Words words) {
    return faults.stream().map(fault -> told(fault, words)).toList();
  }

  private static Fault told(Fault fault, Words words) {
    return fault.is(Severity.NOTE)
        ? Fault.note(
            fault.rule(),
            fault.lot(),
            fault.place(),
            words.say("reading.encoding.found"),
            words.say("reading.encoding.expected"))
        : fault;
  }
}

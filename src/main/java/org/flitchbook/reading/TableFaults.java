package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;

/**
 * What is wrong with the text of a table, as a record tells it: what breaks the reading never
 * reaches one, and the one note is that of an encoding.
 */
final class TableFaults {

  private TableFaults() {}

  static List<Fault> told(List<Fault> faults) {
    return faults.stream().map(TableFaults::told).toList();
  }

  private static Fault told(Fault fault) {
    return fault.is(Severity.NOTE)
        ? Fault.note(
            fault.rule(),
            fault.lot(),
            fault.place(),
            say("reading.encoding.found", "bytes that are no UTF-8"),
            say("reading.encoding.expected", "UTF-8; read as Windows-1252"))
        : fault;
  }
}

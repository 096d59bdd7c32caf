package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.OPEN;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.archive.RecordList;
import org.flitchbook.ledger.Event;

/** The later revisions of a record: it stays what it was, and is no longer the last word. */
record Superseded(RecordList list) {

  /**
   * A sentence for each later revision: that there is one, by whom and why, and which boxes are
   * still to be signed in the last.
   *
   * @param path of the record in its book
   */
  List<Statement> statements(LocalDate day, int revision, String path) {
    String name = path.substring(path.lastIndexOf('/') + 1);
    List<Statement> later =
        list.closes().stream()
            .map(line -> line.event())
            .filter(event -> event.isOf(day) && event.revision() > revision)
            .map(event -> later(event).about(path))
            .toList();
    Set<String> open =
        later.isEmpty()
            ? Set.of()
            : list.toSignAgain(day).getOrDefault(name, new TreeMap<>()).keySet();
    Stream<Statement> unsigned =
        open.stream()
            .map(
                box ->
                    new Statement(
                            OPEN,
                            "proving.superseded.unsigned",
                            "The last revision of it is not signed in \"{0}\".",
                            box)
                        .about(path));
    return Stream.concat(later.stream(), unsigned).toList();
  }

  private static Statement later(Event event) {
    return event.reason().isEmpty()
        ? new Statement(
            OPEN,
            "proving.superseded.found",
            "It is superseded by r{0}. Signatures in it stay valid for what it says.",
            event.revision())
        : new Statement(
            OPEN,
            "proving.superseded",
            "It is superseded by r{0}, made by {1}: {2}. Signatures in it stay valid for what it"
                + " says.",
            event.revision(),
            event.by().isEmpty() ? say("proving.superseded.nobody", "nobody named") : event.by(),
            event.reason());
  }
}

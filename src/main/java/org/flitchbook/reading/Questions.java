package org.flitchbook.reading;

import static org.flitchbook.message.Message.say;

import java.util.List;
import org.flitchbook.input.Fault;
import org.flitchbook.json.Node;

/** Finds in {@code logs.json} what a proposed entry left open and nobody has answered yet. */
final class Questions {

  private Questions() {}

  static void find(Node node, List<Fault> faults) {
    if (node instanceof Node.Obj object) {
      object.members().values().forEach(member -> find(member, faults));
    } else if (node instanceof Node.Items items) {
      items.items().forEach(item -> find(item, faults));
    } else if (node instanceof Node.Text text && text.value().startsWith(Readings.QUESTION)) {
      faults.add(
          Fault.broken(
              "question",
              text.place(),
              say("reading.question", "the question {0}", text.found()),
              say("reading.answer", "its answer")));
    }
  }
}

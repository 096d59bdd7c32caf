package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.reading.Entry;

/**
 * The same value by hand time after time: a pattern for the reviewer, not an accusation.
 *
 * @param times it is one from so many on
 */
@Choice("same value again")
record SameValue(@Key(format = Doubts.COUNT) Integer times) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.handReadings().stream()
        .flatMap(
            read ->
                Run.alike(read.size(), i -> read.get(i).shown().equals(read.get(i - 1).shown()))
                    .filter(run -> run.size() >= times)
                    .map(run -> doubt(read.get(run.first()), run.size())));
  }

  private Doubt doubt(Entry first, int running) {
    return new Doubt(
        first.place().column("value"),
        say(
            "doubt.same.found",
            "{0} written {1} times running for {2}",
            first.shown(),
            running,
            first.what()),
        say("doubt.same.expected", "fewer than {0} running", times),
        say("do.same-value-again", "Read the instrument each time, and write what it shows."));
  }
}

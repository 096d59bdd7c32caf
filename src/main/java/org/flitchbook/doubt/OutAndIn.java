package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Stay;
import org.flitchbook.plan.Product;

/**
 * A lot, or a piece of it, that came out of a step and went into it again: nobody saw where it was.
 * Where the plan says how long it may be between steps, that judges it.
 *
 * @param above it may be out so long, to be carried to another place
 */
@Choice("out and in again")
record OutAndIn(Duration above) implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    boolean isJudged = subject.lot().product().flatMap(Product::between).isPresent();
    return subject.lot().stays().stream()
        .filter(stay -> !isJudged)
        .flatMap(stay -> stay.absences().stream())
        .filter(absence -> longest(absence).compareTo(above) > 0)
        .map(this::doubt);
  }

  private static Duration longest(Stay.Absence absence) {
    return absence.out().time().longestTo(absence.again().time());
  }

  private Doubt doubt(Stay.Absence absence) {
    return new Doubt(
        absence.again().place().column("time"),
        say(
            "doubt.out-and-in.found",
            "{0} {1} after {2} ({3})",
            absence.again().what(),
            Subject.length(longest(absence)),
            absence.out().what(),
            absence.out().place()),
        say("doubt.out-and-in.expected", "at most {0} out of the step", Subject.length(above)),
        say("do.out-and-in-again", "Say where it was, and name readings of that place."));
  }
}

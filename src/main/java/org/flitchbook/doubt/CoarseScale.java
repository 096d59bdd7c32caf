package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * Curing salt weighed on a scale whose step is a large share of it. One rule is lenient and one is
 * strict; they differ by their numbers.
 *
 * @param above the step may be this share of what was weighed
 * @param upTo of a larger share than this the rule says nothing
 */
@Choice({CoarseScale.LENIENT, "scale too coarse"})
record CoarseScale(
    String rule,
    @Key(dimension = Dimension.SHARE) Quantity above,
    @Key(dimension = Dimension.SHARE) Quantity upTo)
    implements Finder {

  static final String LENIENT = "scale coarse for its load";

  @Override
  public Stream<Doubt> find(Subject subject) {
    return subject.lot().entries().stream()
        .filter(entry -> entry.is(What.CURING_SALT) || entry.is(What.ACCELERATOR))
        .filter(entry -> entry.amount().value().signum() > 0)
        .flatMap(entry -> coarse(subject, entry).stream());
  }

  private Optional<Doubt> coarse(Subject subject, Entry entry) {
    return subject
        .plan()
        .instrument(entry.instrument())
        .flatMap(Instrument::readability)
        .map(step -> Subject.percent(step.inBase().over(entry.amount().inBase())))
        .filter(share -> share.isAbove(above) && !share.isAbove(upTo))
        .map(
            share ->
                new Doubt(
                    entry.place().column("instrument"),
                    say(
                        "doubt.coarse.found",
                        "{0} on {1}, one step of which is {2} of it",
                        entry.shown(),
                        entry.instrument(),
                        share),
                    say(
                        "doubt.coarse.expected",
                        "a scale whose step is at most {0}",
                        above.asWritten()),
                    rule.equals(LENIENT)
                        ? say("do.scale-coarse-for-its-load", "Weigh the cure on a finer scale.")
                        : say(
                            "do.scale-too-coarse",
                            "Say how the cure was weighed, and weigh it on a finer scale from now"
                                + " on.")));
  }
}

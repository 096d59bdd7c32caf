package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Register;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;

/** An instrument whose last check failed, or is older than the plan wants. */
@Choice("instrument not in force")
record NotInForce() implements Finder {

  @Override
  public Stream<Doubt> find(Subject subject) {
    return InstrumentUse.first(subject, use -> look(subject, use));
  }

  private Optional<Doubt> look(Subject subject, InstrumentUse use) {
    Register register = subject.register();
    Instrument instrument = use.instrument();
    if (register.inForce(instrument, use.first()) && register.inForce(instrument, use.last())) {
      return Optional.empty();
    }
    Message last =
        register
            .last(instrument.id(), use.last())
            .map(
                check -> say("doubt.check.last", "its last check is at {0}", check.entry().place()))
            .orElse(say("doubt.check.none", "no check of it is on file"));
    return Optional.of(
        new Doubt(
            use.firstAt(),
            say("doubt.check.found", "{0}, and {1}", instrument.id(), last),
            say(
                "doubt.check.expected",
                "a good check at most {0} d before",
                Register.validity(instrument).toDays()),
            say(
                "do.instrument-not-in-force",
                "Check the instrument now and write the result; or name another that read the"
                    + " same.")));
  }
}

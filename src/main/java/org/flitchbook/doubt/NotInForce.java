package org.flitchbook.doubt;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Instrument;

/** An instrument whose last check failed, or is older than the plan wants. */
final class NotInForce implements Finder {

  @Override
  public String name() {
    return "instrument not in force";
  }

  @Override
  public List<Fault> find(Rule rule, Subject subject) {
    return Uses.of(subject.lot())
        .firstFaults(subject, (instrument, use) -> look(rule, subject, instrument, use));
  }

  private static Optional<Fault> look(
      Rule rule, Subject subject, Instrument instrument, Uses.Use use) {
    Register register = subject.register();
    if (register.inForce(instrument, use.first()) && register.inForce(instrument, use.last())) {
      return Optional.empty();
    }
    String last =
        register
            .last(instrument.id(), use.last())
            .map(
                check ->
                    subject.say(
                        "doubt.check.last", "its last check is at {0}", check.entry().place()))
            .orElseGet(() -> subject.say("doubt.check.none", "no check of it is on file"));
    return Optional.of(
        rule.fault(
            subject,
            use.firstAt(),
            subject.say("doubt.check.found", "{0}, and {1}", instrument.id(), last),
            subject.say(
                "doubt.check.expected",
                "a good check at most {0} d before",
                Register.validity(instrument).toDays())));
  }
}

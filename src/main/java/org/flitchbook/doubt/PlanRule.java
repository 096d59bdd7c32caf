package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.lot.Register;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Level;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;

/** What the plan says of itself and of the instruments that the lot was read with. */
sealed interface PlanRule extends Finder
    permits PlanRule.Signer, PlanRule.Reassessment, PlanRule.Between, PlanRule.Check {

  /** The plan was signed with initials that it names for nobody. */
  @Choice("plan signed by nobody known")
  record Signer() implements PlanRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      Plan plan = subject.plan();
      return plan.person(plan.signedBy()).isPresent()
          ? Stream.empty()
          : Stream.of(
              new Doubt(
                  plan.place().column("plan.signedBy"),
                  Message.of(plan.signedBy()),
                  say("doubt.signer.expected", "the initials of a person of the plan"),
                  say(
                      "do.plan-signed-by-nobody-known",
                      "Add the person who signed it to the plan's people.")));
    }
  }

  /** The lot began after the day by which the plan was to be reassessed. */
  @Choice("plan not reassessed")
  record Reassessment() implements PlanRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      Plan plan = subject.plan();
      return subject.lot().entries().stream()
          .limit(1)
          .map(first -> first.time().earliest().atZone(plan.establishment().zone()).toLocalDate())
          .filter(began -> began.isAfter(plan.reassessBy()))
          .map(began -> doubt(plan, began));
    }

    private static Doubt doubt(Plan plan, LocalDate began) {
      return new Doubt(
          plan.place().column("plan.reassessBy"),
          say(
              "doubt.reassess.found",
              "to be reassessed by {0}, and a lot that began on {1}",
              plan.reassessBy(),
              began),
          say("doubt.reassess.expected", "a plan that was reassessed before the lot began"),
          say(
              "do.plan-not-reassessed",
              "Reassess the plan, sign it again, and write what the reassessment says of this"
                  + " lot."));
    }
  }

  /**
   * The plan allows meat to lie long in no step, where nothing watches it.
   *
   * @param atMost so long is usual
   */
  @Choice("long time between steps")
  record Between(@Key(dimension = Dimension.TIME) Quantity atMost) implements PlanRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().product().stream()
          .flatMap(product -> product.between().stream())
          .filter(allowed -> allowed.isAbove(atMost))
          .map(allowed -> doubt(subject.plan(), allowed));
    }

    private Doubt doubt(Plan plan, Quantity allowed) {
      return new Doubt(
          plan.place().column("products"),
          say("doubt.between.found", "{0} between two steps", allowed.asWritten()),
          say("words.at-most", "at most {0}", atMost.asWritten()),
          say(
              "do.long-time-between-steps",
              "Shorten it in the plan, or say what the meat lies in meanwhile and who reads it."));
    }
  }

  /**
   * An instrument of which the plan promises more than one can have, or asks less than one must.
   *
   * @param accuracy no thermometer of a maker reads better than this
   * @param tolerance a thermometer that may be off by more is hardly checked
   * @param steps the same of a scale, in steps of what it shows
   * @param every a check holds no longer than this
   */
  @Choice("instrument hardly checked")
  record Check(
      Degrees accuracy,
      Degrees tolerance,
      @Key(format = Doubts.COUNT) Integer steps,
      Duration every)
      implements PlanRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return InstrumentRule.InstrumentUse.first(subject, use -> look(subject, use.instrument()));
    }

    private Optional<Doubt> look(Subject subject, Instrument instrument) {
      return wrong(instrument)
          .map(
              wrong ->
                  new Doubt(
                      subject.plan().place().column("instruments"),
                      say("doubt.hardly.found", "{0}: {1}", instrument.id(), wrong),
                      say(
                          "doubt.hardly.expected",
                          "an accuracy of at least {0}, a tolerance of at most {1} or {2} steps of"
                              + " a scale, and a check every {3} at least",
                          accuracy,
                          tolerance,
                          steps,
                          Subject.length(every)),
                      say(
                          "do.instrument-hardly-checked",
                          "Look at the unit and the decimal point in the plan, or say what the"
                              + " number rests on.")));
    }

    private Optional<Message> wrong(Instrument instrument) {
      if (Register.validity(instrument).compareTo(every) > 0) {
        return Optional.of(
            say("doubt.hardly.every", "checked every {0}", instrument.checkEvery().asWritten()));
      }
      if (instrument.accuracy().filter(this::isTooGood).isPresent()) {
        Argument known = instrument.accuracy().orElseThrow().asWritten();
        return Optional.of(say("doubt.hardly.accuracy", "an accuracy of {0}", known));
      }
      return isLoose(instrument)
          ? Optional.of(
              say(
                  "doubt.hardly.tolerance",
                  "a tolerance of {0}",
                  instrument.tolerance().asWritten()))
          : Optional.empty();
    }

    private boolean isTooGood(Quantity stated) {
      return Level.ofDifference(stated) < accuracy.difference();
    }

    private boolean isLoose(Instrument instrument) {
      Quantity allowed = instrument.tolerance();
      return instrument.kind().equals("scale")
          ? instrument
              .readability(Unit.GRAM)
              .map(step -> step.inBase().times(Ratio.of(steps)))
              .filter(most -> allowed.inBase().isAbove(most))
              .isPresent()
          : Level.ofDifference(allowed) > tolerance.difference();
    }
  }
}

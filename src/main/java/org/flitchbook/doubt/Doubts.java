package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Format;
import org.flitchbook.json.Key;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.message.Language;
import org.flitchbook.plan.Plan;

/** Finds in a lot's data what would make a bad batch look good. */
public final class Doubts {

  /** The format of a number of things. */
  static final String COUNT = "count";

  static final Binder BINDER =
      Binder.PLAIN
          .with(
              Severity.class,
              Format.choice(List.of(Severity.ASK, Severity.NOTE, Severity.STOP), Severity::word))
          .with(Degrees.class, Degrees.FORMAT)
          .with(
              COUNT,
              Format.of(
                  say("doubt.rules.count", "a whole number in quotes"),
                  text ->
                      text.matches("[0-9]{1,9}")
                          ? Optional.of(Integer.valueOf(text))
                          : Optional.empty()));

  private Doubts() {}

  record RulesFile(
      @Key(optional = true) int flitchbook,
      String title,
      String made,
      @Key(unique = "rule") List<Rule> rules) {}

  /**
   * The rules with their numbers.
   *
   * @param all without those that this version does not know or that lack a number
   * @param faults what is wrong with the file
   */
  public record Rules(List<Rule> all, List<Fault> faults) {

    public Rules {
      all = List.copyOf(all);
      faults = List.copyOf(faults);
    }
  }

  public static Rules rules(SourceFile file) {
    Binder.Bound<RulesFile> read = BINDER.read(file, RulesFile.class);
    return new Rules(read.value().map(RulesFile::rules).orElse(List.of()), read.faults());
  }

  /**
   * A lot that was looked at by the rules for dirty data.
   *
   * @param lot without the readings that are none, its own faults with what people said of them
   * @param faults what the rules found, with what people said of it
   * @param unused the same once the limits are judged, by the rows that their findings used
   */
  public record Result(Lot lot, List<Fault> faults, Function<Set<Place>, Result> unused) {

    public Result {
      faults = List.copyOf(faults);
    }
  }

  /** How long after the event an entry may be typed; empty where no rule says so. */
  public static Optional<Duration> lateAfter(List<Rule> rules) {
    return rules.stream()
        .filter(rule -> rule.name().equals(EntryRule.LateEntry.LENIENT))
        .map(rule -> ((EntryRule.LateEntry) rule.numbers()).after())
        .findFirst();
  }

  /**
   * What the rules say of one lot, and what people said of that; a rule that is not among them is
   * not looked for.
   *
   * @param others what else was found of the lot, of which people may have said something too
   * @param language in which people may have written the name of a rule
   */
  public static Result examine(
      Plan plan,
      List<Rule> rules,
      Register register,
      Lot lot,
      List<Fault> others,
      Language language) {
    return new PlausibilityCheck(new Subject(plan, rules, register, lot), language).result(others);
  }

  /**
   * Whether an instrument that the lot was read with failed a check filed on that day: a lot that
   * was done with is to be judged once more.
   */
  public static boolean isReopened(Plan plan, Register register, Lot lot, LocalDate day) {
    return InstrumentRule.FailedCheck.isReopened(new Subject(plan, List.of(), register, lot), day);
  }
}

package org.flitchbook.doubt;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Plan;

/** Finds in a lot's data what would make a bad batch look good. */
public final class Doubts {

  private static final List<Finder> FINDERS =
      List.of(
          new Gap(),
          new ReWarming(),
          new FinerThanScale(),
          new CoarseScale("scale coarse for its load"),
          new CoarseScale("scale too coarse"),
          new CureOutOfRange(),
          new WeightOffStep(),
          new EnteredTogether(),
          new LateEntry("late entry"),
          new LateEntry("entered days later"),
          new SameValue(),
          new RoundedReadings(),
          new NotInForce(),
          new FailedCheck());

  private Doubts() {}

  /** The rules with their numbers; what is wrong with the file goes to the faults. */
  public static List<Rule> rules(SourceFile file, List<Fault> faults) {
    return RuleReader.read(file, faults);
  }

  /** What the rules say of one lot; a rule that is not among them is not looked for. */
  public static List<Fault> find(Plan plan, List<Rule> rules, Register register, Lot lot) {
    Subject subject = new Subject(plan, register, lot);
    return FINDERS.stream()
        .flatMap(
            finder ->
                rules.stream()
                    .filter(rule -> rule.name().equals(finder.name()))
                    .flatMap(rule -> finder.find(rule, subject).stream()))
        .toList();
  }

  /**
   * Whether an instrument that the lot was read with failed a check filed on that day: a lot that
   * was done with is to be judged once more.
   */
  public static boolean isReopened(Plan plan, Register register, Lot lot, LocalDate day) {
    return FailedCheck.isReopened(new Subject(plan, register, lot), day);
  }

  static List<String> names() {
    return FINDERS.stream().map(Finder::name).toList();
  }

  static Optional<Finder> finder(String name) {
    return FINDERS.stream().filter(finder -> finder.name().equals(name)).findFirst();
  }
}

package org.flitchbook.doubt;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Plan;

/** Finds in a lot's data what would make a bad batch look good. */
public final class Doubts {

  /** They leave readings out, so that each looks at the lot without what the ones before found. */
  static final List<Finder> EXCLUDING =
      List.of(
          new UnitMistaken(),
          new ErrorValue(),
          new ImpossibleValue(),
          new ProbeNotIn(),
          new ProbePulled("probe pulled and put back", false),
          new ProbePulled("probe pulled at the finish", true));

  /** They look at what is left, in any order. */
  static final List<Finder> FINDERS =
      List.of(
          new TwoLevels(),
          new ProbeMoved(),
          new CoreLikeAir(),
          new WrongSide(),
          new Stuck(),
          new LidOpen(),
          new FireOut(),
          new ProbesDisagree(),
          new UnprobedPiece(),
          new ClockOff("clock offset", false),
          new ClockOff("clock drift", true),
          new TimeElsewhere("time before the lot", true),
          new TimeElsewhere("time far from its step", false),
          new FinerThanScale(),
          new CoarseScale("scale coarse for its load"),
          new CoarseScale("scale too coarse"),
          new CureOutOfRange(),
          new WeightOffStep(),
          new EnteredTogether(),
          new LateEntry(LateEntry.NOTED),
          new LateEntry("entered days later"),
          new SameValue(),
          new RoundedReadings(),
          new NotInForce(),
          new FailedCheck());

  /** They look at what is left once people have said which readings are wrong. */
  static final List<Finder> LAST =
      List.of(
          new ReWarming(),
          new Gap(),
          new GapOverCrossing(),
          new LogBeginsLate(),
          new LogEndsEarly(),
          new HandDisagrees());

  private Doubts() {}

  /** The rules with their numbers; what is wrong with the file goes to the faults. */
  public static List<Rule> rules(SourceFile file, List<Fault> faults) {
    return RuleReader.read(file, faults);
  }

  /**
   * What the rules say of one lot, and what people said of that; a rule that is not among them is
   * not looked for.
   *
   * @param others what else was found of the lot, of which people may have said something too
   */
  public static Examined examine(
      Plan plan, List<Rule> rules, Register register, Lot lot, List<Fault> others) {
    return new Examination(new Subject(plan, rules, register, lot), others).examined();
  }

  /**
   * Whether an instrument that the lot was read with failed a check filed on that day: a lot that
   * was done with is to be judged once more.
   */
  public static boolean isReopened(Plan plan, Register register, Lot lot, LocalDate day) {
    return FailedCheck.isReopened(new Subject(plan, List.of(), register, lot), day);
  }

  /** How long after the event an entry may be typed; empty where no rule says so. */
  public static Optional<Duration> lateAfter(List<Rule> rules) {
    return rules.stream()
        .filter(rule -> rule.name().equals(LateEntry.NOTED))
        .map(rule -> rule.time("after"))
        .findFirst();
  }

  static List<String> names() {
    return all().map(Named::name).toList();
  }

  static Optional<Named> named(String name) {
    return all().filter(each -> each.name().equals(name)).findFirst();
  }

  private static Stream<Named> all() {
    return Stream.of(EXCLUDING, FINDERS, LAST, List.of(new Explaining())).flatMap(List::stream);
  }
}

package org.flitchbook.judging;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Verdict;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Lots;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Day;
import org.flitchbook.sheet.What;

/** The lots by their entries as they were first written, without what was corrected later. */
final class FirstWritten {

  /** The rule for dirty data that asks about corrections. */
  static final String RULE = "correction to be explained";

  private final Plan plan;
  private final Instant moment;
  private final Lots lots;

  FirstWritten(Plan plan, List<Day> days, Instant moment) {
    this.plan = plan;
    this.moment = moment;
    this.lots = Lots.assemble(plan, days.stream().map(FirstWritten::uncorrected).toList(), moment);
  }

  private static Day uncorrected(Day day) {
    return day.with(
        day.entries().stream()
            .filter(entry -> entry.corrects().isEmpty() || entry.is(What.EXPLAINED))
            .toList());
  }

  /** Whether something of a lot was corrected, beside what was said of a fault. */
  static boolean isCorrected(Lot lot) {
    return lot.corrections().stream().anyMatch(each -> !each.by().is(What.EXPLAINED));
  }

  /** A limit that the lot misses as it was first written, and no more since a correction. */
  Stream<Fault> passes(Lot lot) {
    Set<String> missed =
        missed(lot).map(finding -> finding.limit().id()).collect(Collectors.toSet());
    return lots.lot(lot.code()).stream()
        .flatMap(this::missed)
        .filter(finding -> !missed.contains(finding.limit().id()))
        .map(finding -> fault(lot, finding));
  }

  private Stream<Finding> missed(Lot lot) {
    return Checks.judge(plan, lot, List.of(), moment).findings().stream()
        .filter(FirstWritten::isMissed);
  }

  /** A value beyond its limit counts, where the verdict on that is not shown, too. */
  private static boolean isMissed(Finding finding) {
    return finding.verdict() == Verdict.NOT_MET
        || (finding.verdict() == Verdict.NOT_SHOWN
            && finding.measured().filter(Measured::isBeyond).isPresent());
  }

  private static Fault fault(Lot lot, Finding missed) {
    Lot.Correction correction =
        lot.corrections().stream()
            .filter(each -> missed.rows().contains(line(each.replaced().place())))
            .findFirst()
            .orElse(lot.corrections().get(0));
    return Fault.ask(
        RULE,
        lot.code(),
        correction.by().place().column("value"),
        say(
            "judging.correction.found",
            "{0} is not met by {1} as it was first written",
            missed.limit().name(),
            correction.replaced().place()),
        say(
            "judging.correction.expected",
            "what it was corrected from and who saw it, in a row \"explained\""));
  }

  private static Place line(Place place) {
    return Place.of(place.file(), place.line());
  }
}

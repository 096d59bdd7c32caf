package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.stream.Stream;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;

/**
 * What a lot comes to under a plan that was in force for a part of its time.
 *
 * @param until the day on which the next version took its place
 */
public record FormerJudgement(String version, LocalDate until, Judgement judgement) {

  /** Of each limit the stricter finding counts, and says by which version it was made. */
  Judgement orStricter(Plan plan, Judgement now) {
    Stream<Finding> ofNow =
        now.findings().stream()
            .map(
                finding ->
                    judgement
                        .on(finding.limit().id())
                        .map(before -> stricter(plan, finding, before))
                        .orElse(finding));
    Stream<Finding> gone =
        judgement.findings().stream()
            .filter(before -> now.on(before.limit().id()).isEmpty())
            .map(before -> before.remarked(only()));
    return Judgement.of(
        now.lot(),
        Stream.concat(ofNow, gone).toList(),
        Stream.concat(now.faults().stream(), judgement.faults().stream()).distinct().toList());
  }

  private Finding stricter(Plan plan, Finding finding, Finding before) {
    if (before.verdict().isWorseThan(finding.verdict())) {
      return before.remarked(
          say(
              "check.version.former-stricter",
              "by plan version {0}, in force until {1}; version {2} gives {3}",
              version,
              until,
              plan.version(),
              finding.verdict()));
    }
    return before.limit().kind().equals(finding.limit().kind())
        ? finding
        : finding.remarked(
            say(
                "check.version.stricter-now",
                "by plan version {0}, the stricter here; version {1} gives {2}",
                plan.version(),
                version,
                before.verdict()));
  }

  private Message only() {
    return say(
        "check.version.only-former",
        "by plan version {0}, in force until {1}; the plan of today has no such limit",
        version,
        until);
  }
}

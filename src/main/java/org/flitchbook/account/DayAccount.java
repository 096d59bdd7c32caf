package org.flitchbook.account;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.account.LotAccount.Keeping;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;

/**
 * What is added up about several lots.
 *
 * @param verdicts how many lots have each verdict, from the worst; those that no lot has are left
 *     out
 * @param deviations of all of them
 * @param held the lots with a deviation
 * @param keepUntil empty where no rule of the regime is known
 */
public record DayAccount(
    int lots,
    Map<Verdict, Integer> verdicts,
    int deviations,
    List<String> held,
    Optional<Keeping> keepUntil) {

  static DayAccount of(List<Judgement> judgements, Optional<Keeping> keepUntil) {
    Map<Verdict, Integer> verdicts = new EnumMap<>(Verdict.class);
    judgements.forEach(each -> verdicts.merge(each.verdict(), 1, Integer::sum));
    return new DayAccount(
        judgements.size(),
        Collections.unmodifiableMap(verdicts),
        judgements.stream().mapToInt(each -> each.deviations().size()).sum(),
        judgements.stream()
            .filter(each -> !each.deviations().isEmpty())
            .map(each -> each.lot().code())
            .toList(),
        keepUntil);
  }
}

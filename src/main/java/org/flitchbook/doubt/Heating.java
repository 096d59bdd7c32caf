package org.flitchbook.doubt;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.flitchbook.lot.Track;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;

/**
 * The heating of a core in a whole log, without what is known to be no reading. Times are in
 * milliseconds since 1970.
 *
 * @param cold the last time before the core had risen from its lowest by what the rule says
 * @param peak the first time at its highest
 * @param hot the last time before it had fallen from there by what the rule says
 * @param rises whether it rises in the log, so that the beginning is seen
 * @param falls whether it falls behind as steeply as meat that came out
 */
record Heating(long cold, long peak, long hot, boolean rises, boolean falls) {

  /** Around the smoke only: a log may hold what was smoked on other days as well. */
  static Heating of(Rule rule, Subject subject, Series series) {
    Samples samples = series.samples();
    long around = rule.millis("around");
    long from = subject.into(Step.SMOKE).orElse(Long.MIN_VALUE + around) - around;
    long to = subject.endOf(Step.SMOKE).orElse(Long.MAX_VALUE - around) + around;
    Set<Long> none = excluded(subject, series);
    int[] kept =
        IntStream.range(0, samples.size())
            .filter(i -> samples.at(i) >= from && samples.at(i) <= to)
            .filter(i -> !none.contains(samples.at(i)))
            .toArray();
    return kept.length == 0 ? new Heating(0, 0, 0, false, false) : of(rule, samples, kept);
  }

  private static Set<Long> excluded(Subject subject, Series series) {
    return subject.coreTracks().stream()
        .filter(track -> track.called().equals(series.called()))
        .flatMap(track -> track.excluded().stream())
        .map(Track.Excluded::at)
        .collect(Collectors.toSet());
  }

  private static Heating of(Rule rule, Samples samples, int[] kept) {
    int peak = 0;
    for (int i = 0; i < kept.length; i++) {
      peak = samples.level(kept[i]) > samples.level(kept[peak]) ? i : peak;
    }
    long lowest =
        IntStream.rangeClosed(0, peak).mapToLong(i -> samples.level(kept[i])).min().orElse(0);
    int cold = peak;
    while (cold > 0 && samples.level(kept[cold]) > lowest + rule.difference("rise")) {
      cold--;
    }
    long highest = samples.level(kept[peak]);
    int hot = kept.length - 1;
    while (hot > peak && samples.level(kept[hot]) < highest - rule.difference("fall")) {
      hot--;
    }
    return new Heating(
        samples.at(kept[cold]),
        samples.at(kept[peak]),
        samples.at(kept[hot]),
        cold < peak && samples.level(kept[cold]) <= lowest + rule.difference("rise"),
        isSteep(rule, samples, kept, hot));
  }

  /** Meat that lies in a dying fire falls too, but slowly. */
  private static boolean isSteep(Rule rule, Samples samples, int[] kept, int hot) {
    long until = samples.at(kept[hot]) + rule.millis("within");
    long floor = samples.level(kept[hot]) - rule.difference("drop");
    return IntStream.range(hot, kept.length)
        .takeWhile(i -> samples.at(kept[i]) <= until)
        .anyMatch(i -> samples.level(kept[i]) <= floor);
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * A weight that does not follow from the one before it: another unit, another piece, or a slip of
 * the pen. A step that was not weighed is estimated in between. The numbers are the least and the
 * most that a piece weighs after a step, as a share of what it weighed before it.
 */
@Choice("weight off its step")
record WeightOffStep(
    @Key(dimension = Dimension.SHARE) Quantity cureAtLeast,
    @Key(dimension = Dimension.SHARE) Quantity cureAtMost,
    @Key(dimension = Dimension.SHARE) Quantity soakAtLeast,
    @Key(dimension = Dimension.SHARE) Quantity soakAtMost,
    @Key(dimension = Dimension.SHARE) Quantity dryAtLeast,
    @Key(dimension = Dimension.SHARE) Quantity dryAtMost,
    @Key(dimension = Dimension.SHARE) Quantity smokeAtLeast,
    @Key(dimension = Dimension.SHARE) Quantity smokeAtMost,
    @Key(dimension = Dimension.SHARE) Quantity chillAtLeast,
    @Key(dimension = Dimension.SHARE) Quantity chillAtMost)
    implements Finder {

  /** The shares of a weight between which the next one lies. */
  private record Range(Ratio least, Ratio most) {

    Range and(Range next) {
      return new Range(least.times(next.least), most.times(next.most));
    }
  }

  private Range range(Step step) {
    return switch (step) {
      case CURE -> new Range(cureAtLeast.inBase(), cureAtMost.inBase());
      case SOAK -> new Range(soakAtLeast.inBase(), soakAtMost.inBase());
      case DRY -> new Range(dryAtLeast.inBase(), dryAtMost.inBase());
      case SMOKE -> new Range(smokeAtLeast.inBase(), smokeAtMost.inBase());
      case CHILL -> new Range(chillAtLeast.inBase(), chillAtMost.inBase());
      case RELEASE -> new Range(Ratio.ONE, Ratio.ONE);
    };
  }

  /**
   * What a piece weighed once a step had been done to it.
   *
   * @param after the step; empty for the green weight
   */
  private record Weighed(Optional<Step> after, Ratio grams) {}

  @Override
  public Stream<Doubt> find(Subject subject) {
    List<Doubt> doubts = new ArrayList<>();
    Map<String, Weighed> before = new HashMap<>();
    for (Entry entry : subject.lot().entries()) {
      Weighed last = before.get(entry.piece());
      if (entry.is(What.GREEN_WEIGHT)) {
        before.put(entry.piece(), new Weighed(Optional.empty(), entry.amount().inBase()));
      } else if (entry.is(What.RIND_WEIGHT) && last != null) {
        before.put(
            entry.piece(), new Weighed(last.after(), last.grams().minus(entry.amount().inBase())));
      } else if (entry.is(What.WEIGHT) || entry.is(What.GLAZED)) {
        if (last != null && entry.is(What.WEIGHT)) {
          off(last, entry).ifPresent(doubts::add);
        }
        if (entry.is(What.GLAZED) && entry.piece().isEmpty()) {
          // How much of it each piece took on, nobody knows.
          before.clear();
        }
        before.put(entry.piece(), new Weighed(entry.sheet().step(), entry.amount().inBase()));
      }
    }
    return doubts.stream();
  }

  private Optional<Doubt> off(Weighed before, Entry entry) {
    if (before.grams().signum() <= 0) {
      return Optional.empty();
    }
    Step last = entry.sheet().step().orElseThrow();
    Range range = between(before, last).map(this::range).reduce(Range::and).orElse(range(last));
    Ratio share = entry.amount().inBase().over(before.grams());
    return share.isBelow(range.least()) || share.isAbove(range.most())
        ? Optional.of(doubt(entry, share, range))
        : Optional.empty();
  }

  /** None where it was weighed twice in one step: the second weight has that step's range too. */
  private static Stream<Step> between(Weighed before, Step last) {
    return Step.ofWork().stream()
        .filter(step -> step.compareTo(last) <= 0)
        .filter(step -> before.after().filter(done -> step.compareTo(done) <= 0).isEmpty());
  }

  private Doubt doubt(Entry entry, Ratio share, Range range) {
    return new Doubt(
        entry.place().column("value"),
        say(
            "doubt.weight.found",
            "{0}, {1} of the weight before",
            entry.shown(),
            Subject.percent(share)),
        say(
            "doubt.weight.expected",
            "{0} of it after {1}",
            say(
                "doubt.weight.range",
                "{0} to {1}",
                Subject.percent(range.least()),
                Subject.percent(range.most())),
            entry.sheet().step().orElseThrow()),
        say(
            "do.weight-off-its-step",
            "Weigh again; look at the unit (pounds and ounces are no decimal pounds) and at the"
                + " piece."));
  }
}

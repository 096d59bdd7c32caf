package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * More packed, cut off and thrown away, or more sent and destroyed, than the lot weighed, or more
 * returned than was sent: another lot's goods are among them.
 *
 * @param above what packing adds and scales differ by is at most this share
 */
@Choice("more than there is")
record StockRule(@Key(dimension = Dimension.SHARE) Quantity above) implements Finder {

  private static final Set<What> PARTED = Set.of(What.PACKED, What.ENDS, What.WASTE, What.SAMPLE);
  private static final Set<What> GONE = Set.of(What.DISPATCHED, What.DESTROYED);
  private static final Set<What> SENT = Set.of(What.DISPATCHED);
  private static final Set<What> BACK = Set.of(What.RETURNED);

  @Override
  public Stream<Doubt> find(Subject subject) {
    Lot lot = subject.lot();
    Optional<Ratio> weighed =
        weighed(lot).map(grams -> grams.times(above.inBase().plus(Ratio.ONE)));
    Optional<Ratio> sent =
        Optional.of(sum(lot, SENT, entry -> true)).filter(grams -> isAllWeighed(lot, SENT));
    Stream<Optional<Doubt>> doubts =
        Stream.of(
            weighed.flatMap(most -> first(lot, PARTED, Set.of(), most)),
            weighed.flatMap(most -> first(lot, GONE, BACK, most)),
            sent.flatMap(most -> first(lot, BACK, Set.of(), most)),
            unsent(lot));
    return doubts.flatMap(Optional::stream);
  }

  /** What came back without a weight before anything was sent. */
  private static Optional<Doubt> unsent(Lot lot) {
    return lot.all(What.RETURNED).stream()
        .filter(back -> back.quantity().isEmpty())
        .filter(
            back ->
                lot.all(What.DISPATCHED).stream()
                    .noneMatch(sent -> !back.time().isBefore(sent.time())))
        .findFirst()
        .map(
            back ->
                new Doubt(
                    back.place(),
                    say("doubt.stock.unsent", "{0}, and nothing was sent before", back.what()),
                    say("doubt.stock.sent", "an entry \"{0}\" before it", What.DISPATCHED),
                    remedy()));
  }

  private static boolean isAllWeighed(Lot lot, Set<What> whats) {
    return lot.entries().stream()
        .filter(entry -> whats.contains(entry.what()))
        .allMatch(entry -> entry.quantity().isPresent());
  }

  /**
   * In g: the last weight of the whole lot, or the last of each of its pieces, whichever is more.
   */
  private static Optional<Ratio> weighed(Lot lot) {
    List<Entry> weights = lot.all(What.WEIGHT);
    Map<String, Ratio> last = new HashMap<>();
    for (Entry entry : weights.isEmpty() ? lot.all(What.GREEN_WEIGHT) : weights) {
      last.put(entry.piece(), entry.amount().inBase());
    }
    Ratio whole = last.getOrDefault("", Ratio.ZERO);
    last.remove("");
    Ratio pieces = last.values().stream().reduce(Ratio.ZERO, Ratio::plus);
    return Optional.of(whole.isBelow(pieces) ? pieces : whole).filter(grams -> grams.signum() > 0);
  }

  /** The first entry at which it is too much, less what came back. */
  private static Optional<Doubt> first(Lot lot, Set<What> whats, Set<What> less, Ratio most) {
    return lot.entries().stream()
        .filter(entry -> whats.contains(entry.what()))
        .filter(entry -> upTo(lot, whats, less, entry).isAbove(most))
        .findFirst()
        .map(entry -> doubt(entry, upTo(lot, whats, less, entry), most));
  }

  private static Ratio upTo(Lot lot, Set<What> whats, Set<What> less, Entry last) {
    Predicate<Entry> before = entry -> !last.time().isBefore(entry.time());
    return sum(lot, whats, before).minus(sum(lot, less, before));
  }

  private static Ratio sum(Lot lot, Set<What> whats, Predicate<Entry> wanted) {
    return lot.entries().stream()
        .filter(entry -> whats.contains(entry.what()))
        .filter(wanted)
        .flatMap(entry -> entry.quantity().stream())
        .map(Quantity::inBase)
        .reduce(Ratio.ZERO, Ratio::plus);
  }

  private static Doubt doubt(Entry entry, Ratio sum, Ratio most) {
    return new Doubt(
        entry.place().column("value"),
        say(
            "doubt.stock.found",
            "{0} of {1}, which makes {2} together",
            entry.what(),
            entry.shown(),
            grams(sum)),
        say("words.at-most", "at most {0}", grams(most)),
        remedy());
  }

  private static Message remedy() {
    return say(
        "do.more-than-there-is",
        "Weigh again what is left, find out which lot the rest is of, and correct the entries.");
  }

  private static Quantity grams(Ratio sum) {
    return Quantity.of(sum.floor().longValueExact(), Unit.GRAM);
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.plan.CureMethod;
import org.flitchbook.plan.CureMethod.Into;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Shift;

/** Rows of the sheets that no limit looks at as they stand, or that contradict each other. */
sealed interface SheetRule extends Finder
    permits SheetRule.TooCold,
        SheetRule.CureUnderOtherWord,
        SheetRule.OtherMethod,
        SheetRule.RindContradicted {

  /**
   * A cooler or water colder than cured meat is kept: most likely the other unit.
   *
   * @param below a place that is no freezer is not below this
   */
  @Choice("place too cold")
  record TooCold(Degrees below) implements SheetRule {

    private static final Set<What> COLD = Set.of(What.COOLER_TEMPERATURE, What.WATER_TEMPERATURE);

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().tracks().stream()
          .map(Lot.StepTrack::track)
          .filter(track -> COLD.contains(track.what()))
          .flatMap(track -> first(subject, track).stream());
    }

    private Optional<Doubt> first(Subject subject, Track track) {
      int[] cold =
          IntStream.range(0, track.size())
              .filter(i -> track.level(i, Shift.AS_WRITTEN) < below.level())
              .filter(i -> !isFreezer(subject, track.location(i)))
              .toArray();
      return cold.length == 0 ? Optional.empty() : Optional.of(doubt(subject, track, cold));
    }

    private static boolean isFreezer(Subject subject, String location) {
      return subject
          .plan()
          .location(location)
          .filter(place -> place.kind().equals("freezer"))
          .isPresent();
    }

    private Doubt doubt(Subject subject, Track track, int[] cold) {
      Message first = subject.said(track, cold[0]);
      return new Doubt(
          track.place(cold[0]),
          cold.length == 1
              ? say("doubt.too-cold.found", "{0}: {1}", track.what(), first)
              : say(
                  "doubt.too-cold.several",
                  "{0}: {1} ({2} readings)",
                  track.what(),
                  first,
                  cold.length),
          say("doubt.too-cold.expected", "at least {0} in a place that is no freezer", below),
          say(
              "do.place-too-cold",
              "Look at the unit that the instrument shows, and correct the entries."));
    }
  }

  /** What the plan knows as an ingredient with nitrite or nitrate, weighed under another word. */
  @Choice("curing salt under another word")
  record CureUnderOtherWord() implements SheetRule {

    private static final Set<What> OTHER =
        Set.of(What.SALT, What.SUGAR, What.ACCELERATOR, What.OTHER, What.GLAZED);

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().entries().stream()
          .filter(entry -> OTHER.contains(entry.what()))
          .flatMap(
              entry ->
                  subject.plan().ingredients().stream()
                      .filter(CureUnderOtherWord::cures)
                      .filter(cure -> isMeant(cure, entry))
                      .limit(1)
                      .map(cure -> doubt(entry, cure)));
    }

    private static boolean cures(Ingredient ingredient) {
      return Stream.of(
              ingredient.sodiumNitrite(),
              ingredient.potassiumNitrite(),
              ingredient.sodiumNitrate(),
              ingredient.potassiumNitrate())
          .flatMap(Optional::stream)
          .anyMatch(share -> share.value().signum() > 0);
    }

    private static boolean isMeant(Ingredient cure, Entry entry) {
      String item = entry.item().strip();
      return item.equalsIgnoreCase(cure.lot()) || item.equalsIgnoreCase(cure.name());
    }

    private static Doubt doubt(Entry entry, Ingredient cure) {
      return new Doubt(
          entry.place().column("what"),
          say(
              "doubt.other-word.found",
              "{0} of {1}, which holds nitrite or nitrate ({2})",
              entry.what(),
              entry.item(),
              cure.name()),
          say(
              "doubt.other-word.expected",
              "what holds nitrite or nitrate as {0}",
              What.CURING_SALT),
          say(
              "do.curing-salt-under-another-word",
              "Do not rub it in; correct the word, and look at the sum again."));
    }
  }

  /** A row of a way of curing that the product's method has not, or a cure after its pickle. */
  @Choice("row of another method")
  record OtherMethod() implements SheetRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().product().stream().flatMap(product -> rows(subject, product));
    }

    private static Stream<Doubt> rows(Subject subject, Product product) {
      CureMethod method = product.cureMethod();
      Set<What> pickled =
          method.ways().stream()
              .filter(way -> way.into() == Into.PICKLE)
              .flatMap(way -> Stream.concat(Stream.of(What.PICKLE), way.takenUp().stream()))
              .collect(Collectors.toSet());
      Predicate<Entry> isForeign =
          entry ->
              Set.of(What.PICKLE, What.PUMP, What.PICK_UP).contains(entry.what())
                  && !pickled.contains(entry.what());
      boolean onlyPickled = method.ways().size() == 1 && method.ways().get(0).into() == Into.PICKLE;
      return subject.lot().entries().stream()
          .filter(isForeign.or(entry -> onlyPickled && isRubAfter(subject, entry)))
          .map(entry -> doubt(entry, method));
    }

    /** What is weighed after the piece took its pickle up was not in that pickle. */
    private static boolean isRubAfter(Subject subject, Entry entry) {
      return entry.is(What.CURING_SALT)
          && Stream.of(What.PUMP, What.INTO_CURE)
              .flatMap(what -> subject.lot().all(what).stream())
              .filter(taken -> taken.piece().isEmpty() || taken.piece().equals(entry.piece()))
              .anyMatch(taken -> taken.time().isBefore(entry.time()));
    }

    private static Doubt doubt(Entry entry, CureMethod method) {
      return new Doubt(
          entry.place().column("what"),
          say("doubt.method.found", "{0} at {1}", entry.what(), entry.shown()),
          say("doubt.method.expected", "rows of the product's cure method, {0}", method),
          say(
              "do.row-of-another-method",
              "Name the method that was used in the plan, or say what this row is."));
    }
  }

  /** A rind that was weighed though the piece was said to have none when it was weighed. */
  @Choice("rind weighed though off")
  record RindContradicted() implements SheetRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().all(What.RIND_WEIGHT).stream()
          .filter(rind -> isOff(subject, rind))
          .map(RindContradicted::doubt);
    }

    private static boolean isOff(Subject subject, Entry rind) {
      return subject.lot().all(What.GREEN_WEIGHT).stream()
          .filter(green -> isOfSamePiece(green, rind))
          .flatMap(
              green ->
                  subject.lot().all(What.RIND).stream()
                      .filter(stated -> isOfSamePiece(stated, green))
                      .filter(stated -> !green.time().isBefore(stated.time()))
                      .reduce((earlier, later) -> later)
                      .stream())
          .anyMatch(stated -> stated.value().equalsIgnoreCase("off"));
    }

    private static boolean isOfSamePiece(Entry one, Entry other) {
      return one.piece().isEmpty() || other.piece().isEmpty() || one.piece().equals(other.piece());
    }

    private static Doubt doubt(Entry rind) {
      return new Doubt(
          rind.place(),
          say("doubt.rind.found", "{0} of {1}, beside \"rind off\"", rind.what(), rind.shown()),
          say(
              "doubt.rind.expected",
              "a rind weight only of a piece that was weighed with its rind"),
          say(
              "do.rind-weighed-though-off",
              "Say whether the green weight was taken with the rind on, and correct the entry."));
    }
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Message;
import org.flitchbook.plan.CureMethod;
import org.flitchbook.plan.CureMethod.Into;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.plan.Plan;
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
      List<Track> tracks =
          subject.lot().tracks().stream()
              .map(Lot.StepTrack::track)
              .filter(track -> COLD.contains(track.what()))
              .toList();
      Set<Entry> inTracks =
          tracks.stream()
              .flatMap(track -> IntStream.range(0, track.size()).mapToObj(track::entry))
              .flatMap(Optional::stream)
              .collect(Collectors.toSet());
      return Stream.concat(
          tracks.stream().flatMap(track -> first(subject, track).stream()),
          subject.lot().entries().stream()
              .filter(entry -> COLD.contains(entry.what()) && !inTracks.contains(entry))
              .filter(entry -> entry.amount().isBelow(below.written()))
              .filter(entry -> !isFreezer(subject, entry.item()))
              .map(entry -> doubt(entry.place(), entry.what(), Message.of(entry.shown()), 1)));
    }

    private Optional<Doubt> first(Subject subject, Track track) {
      int[] cold =
          IntStream.range(0, track.size())
              .filter(i -> track.level(i, Shift.AS_WRITTEN) < below.level())
              .filter(i -> !isFreezer(subject, track.location(i)))
              .toArray();
      return IntStream.of(cold)
          .limit(1)
          .mapToObj(i -> doubt(track.place(i), track.what(), subject.said(track, i), cold.length))
          .findFirst();
    }

    private static boolean isFreezer(Subject subject, String location) {
      return subject
          .plan()
          .location(location)
          .filter(place -> place.kind().equals("freezer"))
          .isPresent();
    }

    private Doubt doubt(Place place, What what, Message first, int readings) {
      return new Doubt(
          place,
          readings == 1
              ? say("doubt.too-cold.found", "{0}: {1}", what, first)
              : say("doubt.too-cold.several", "{0}: {1} ({2} readings)", what, first, readings),
          say("doubt.too-cold.expected", "at least {0} in a place that is no freezer", below),
          say(
              "do.place-too-cold",
              "Look at the unit that the instrument shows, and correct the entries."));
    }
  }

  /**
   * What the plan knows as an ingredient with nitrite or nitrate, or what is called so, weighed
   * under another word. Only letters and digits are compared: C1 7741 is C1-7741.
   *
   * @param called words that stand in the names of such ingredients
   */
  @Choice("curing salt under another word")
  record CureUnderOtherWord(List<String> called) implements SheetRule {

    private static final Set<What> OTHER =
        Set.of(What.SALT, What.SUGAR, What.ACCELERATOR, What.OTHER, What.GLAZED);

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().entries().stream()
          .filter(entry -> OTHER.contains(entry.what()))
          .filter(entry -> isCure(subject.plan(), plain(entry.item())))
          .map(CureUnderOtherWord::doubt);
    }

    private boolean isCure(Plan plan, String item) {
      return called.stream().map(CureUnderOtherWord::plain).anyMatch(item::contains)
          || plan.ingredients().stream()
              .filter(CureUnderOtherWord::cures)
              .flatMap(cure -> Stream.of(cure.lot(), cure.name()))
              .anyMatch(name -> plain(name).equals(item));
    }

    private static String plain(String name) {
      return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
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

    private static Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("what"),
          say(
              "doubt.other-word.found",
              "{0} of {1}, which holds nitrite or nitrate by its name",
              entry.what(),
              entry.item()),
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
      return Stream.concat(
          subject.lot().all(What.RIND_WEIGHT).stream()
              .filter(rind -> isOff(subject, rind))
              .map(RindContradicted::doubt),
          subject.lot().all(What.RIND).stream()
              .filter(rind -> isOnAgain(subject, rind))
              .map(RindContradicted::onAgain));
    }

    /** Rind does not grow again. */
    private static boolean isOnAgain(Subject subject, Entry rind) {
      return rind.value().equalsIgnoreCase("on")
          && subject.lot().all(What.RIND).stream()
              .filter(other -> isOfSamePiece(other, rind) && other.value().equalsIgnoreCase("off"))
              .anyMatch(off -> off.time().isBefore(rind.time()));
    }

    private static Doubt onAgain(Entry rind) {
      return new Doubt(
          rind.place(),
          say("doubt.rind.on-again", "\"rind on\" after \"rind off\""),
          say("doubt.rind.one", "one of the two"),
          say(
              "do.rind-weighed-though-off",
              "Say whether the green weight was taken with the rind on, and correct the entry."));
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

package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Location;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Whether the people, instruments, places and ingredients that entries name are known and fit. */
record ReferenceCheck(Plan plan) {

  static final Message NO_SCALE = say("lot.instrument.no-scale", "a thermometer or logger");
  static final Message OF_HUMIDITY =
      say("lot.instrument.humidity", "an instrument with its \"humidityAccuracy\" in the plan");

  static final Message ANOTHER_KIND =
      say("lot.kind.expected", "a place of another kind, or its kind in the plan corrected");

  /**
   * What is wrong with entries.
   *
   * @param actions those of no lot that are open, see {@link #openWithoutLot}
   */
  Stream<Fault> of(List<Entry> entries, List<Entry> actions) {
    return Stream.concat(ofEntries(entries), ofActions(actions));
  }

  private Stream<Fault> ofEntries(List<Entry> entries) {
    return entries.stream()
        .flatMap(
            entry ->
                Stream.of(
                        person(entry),
                        instrument(entry),
                        location(entry),
                        ingredient(entry),
                        day(entry),
                        kindOfPlace(entry).stream())
                    .flatMap(Function.identity()));
  }

  private Stream<Fault> person(Entry entry) {
    return entry.by().isEmpty() || plan.person(entry.by()).isPresent()
        ? Stream.of()
        : stop(
            entry,
            "initials",
            "by",
            Message.of(entry.by()),
            say(
                "lot.member.initials",
                "initials in the plan: {0}",
                Listing.commas(plan.people().stream().map(Person::initials).toList())));
  }

  private Stream<Fault> instrument(Entry entry) {
    if (entry.instrument().isEmpty()) {
      return Stream.of();
    }
    Optional<Instrument> known = plan.instrument(entry.instrument());
    return known.isPresent()
        ? Stream.concat(ofHumidity(entry, known.get()), ofKind(entry, known.get()))
        : instrument(
            entry,
            Message.of(entry.instrument()),
            say(
                "lot.member.instruments",
                "an instrument of the plan: {0}",
                Listing.commas(plan.instruments().stream().map(Instrument::id).toList())));
  }

  private static Stream<Fault> ofHumidity(Entry entry, Instrument instrument) {
    return entry.is(What.HUMIDITY) && instrument.humidityAccuracy().isEmpty()
        ? instrument(entry, Message.of(instrument.id()), OF_HUMIDITY)
        : Stream.of();
  }

  private static Stream<Fault> ofKind(Entry entry, Instrument instrument) {
    boolean weighs = entry.what().shape() == Shape.MASS;
    if (weighs == instrument.kind().equals("scale") || !entry.what().shape().needsInstrument()) {
      return Stream.of();
    }
    Word kind = new Word("instrument", instrument.kind());
    return instrument(
        entry,
        say("lot.instrument.is-a", "{0}, a {1}", instrument.id(), kind),
        weighs ? say("lot.instrument.scale", "a scale") : NO_SCALE);
  }

  private static Stream<Fault> instrument(Entry entry, Message found, Message expected) {
    return stop(entry, "instrument", "instrument", found, expected);
  }

  private Stream<Fault> location(Entry entry) {
    boolean into = Step.ofWork().stream().anyMatch(step -> step.into() == entry.what());
    boolean ofPlaceAlone = entry.lot().isEmpty() && entry.sheet().step().isPresent();
    return !(into || ofPlaceAlone) || plan.location(entry.item()).isPresent()
        ? Stream.of()
        : stop(
            entry,
            "place",
            "item",
            Message.of(entry.item()),
            say(
                "lot.member.places",
                "a place of the plan: {0}",
                Listing.commas(plan.locations().stream().map(Location::id).toList())));
  }

  private Stream<Fault> ingredient(Entry entry) {
    return !entry.is(What.CURING_SALT) || plan.ingredient(entry.item()).isPresent()
        ? Stream.of()
        : stop(
            entry,
            "curing salt",
            "item",
            item(entry),
            say(
                "lot.member.ingredients",
                "a lot of curing salt in the plan: {0}",
                Listing.commas(plan.ingredients().stream().map(Ingredient::lot).toList())));
  }

  /**
   * A day's folder may hold the night before and after. What was typed days later stands in the
   * folder of the day on which it was typed, and a correction in any.
   */
  private Stream<Fault> day(Entry entry) {
    return plan.practice().daysApart().stream()
        .filter(days -> entry.corrects().isEmpty() && !isNear(entry, days))
        .map(
            days ->
                Fault.ask(
                    "row of another day",
                    entry.lot(),
                    entry.place().column("time"),
                    say("lot.day.found", "a time of another day than its folder"),
                    say(
                        "lot.day.expected",
                        "a time at most {0} off, or in \"entered\" when it was typed",
                        Quantity.of(days, Unit.DAY))));
  }

  private boolean isNear(Entry entry, int days) {
    LocalDate filed = LocalDate.parse(entry.place().file().split("/", 2)[0]);
    return Stream.concat(Stream.of(entry.time()), entry.entered().stream())
        .map(time -> LocalDate.ofInstant(time.earliest(), plan.establishment().zone()))
        .anyMatch(date -> Math.abs(ChronoUnit.DAYS.between(filed, date)) <= days);
  }

  /** What was found, held or done of no lot: of a place, an instrument or the house. */
  static List<Entry> openWithoutLot(List<Entry> entries) {
    List<Entry> actions =
        entries.stream()
            .filter(entry -> entry.lot().isEmpty() && entry.sheet() == Sheet.ACTIONS)
            .toList();
    return actions.stream()
        .filter(entry -> !entry.is(What.CLOSED))
        .filter(
            entry ->
                actions.stream()
                    .filter(each -> each.is(What.CLOSED) && each.item().equals(entry.item()))
                    .noneMatch(closed -> !closed.time().isBefore(entry.time())))
        .toList();
  }

  /** What is of a place is asked about in the lots that lay there. */
  private Stream<Fault> ofActions(List<Entry> actions) {
    return actions.stream()
        .filter(entry -> plan.location(entry.item()).isEmpty())
        .map(
            entry ->
                Fault.ask(
                    "row without a lot",
                    "",
                    entry.place().column("lot"),
                    say(
                        "lot.none.found",
                        "a row \"{0}\" of no lot and of no place of the plan",
                        entry.what()),
                    say(
                        "lot.none.expected",
                        "the lot, or the place as the item; or \"closed\" of the same item")));
  }

  private Optional<Fault> kindOfPlace(Entry entry) {
    return plan.location(entry.item())
        .filter(place -> !suits(entry.what(), place.kind()))
        .map(
            place ->
                Fault.ask(
                    "kind of place",
                    entry.lot(),
                    entry.place().column("item"),
                    inPlace(entry.what(), place),
                    ANOTHER_KIND));
  }

  static Message inPlace(What what, Location place) {
    return say("lot.kind.found", "{0} in {1}, a {2}", what, place.id(), place.kind());
  }

  /** Smoke has its own places, and so has water; cured and chilled is in neither. */
  static boolean suits(What what, String kind) {
    return switch (what) {
      case INTO_CURE, INTO_DRYING, INTO_CHILL -> !kind.equals("smoker") && !kind.equals("water");
      case INTO_SOAK -> !kind.equals("smoker") && !kind.equals("freezer");
      case CHAMBER_TEMPERATURE, WET_BULB_TEMPERATURE, INTO_SMOKE ->
          !kind.equals("cooler") && !kind.equals("freezer") && !kind.equals("water");
      case COOLER_TEMPERATURE -> !kind.equals("water");
      case WATER_TEMPERATURE -> !kind.equals("smoker") && !kind.equals("freezer");
      default -> true;
    };
  }

  /** The item that an entry names. */
  static Message item(Entry entry) {
    return entry.item().isEmpty() ? say("words.nothing", "nothing") : Message.of(entry.item());
  }

  private static Stream<Fault> stop(
      Entry entry, String rule, String column, Message found, Message expected) {
    return Stream.of(Fault.stop(rule, entry.lot(), entry.place().column(column), found, expected));
  }
}

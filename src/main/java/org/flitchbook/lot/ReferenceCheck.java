package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
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
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * Whether the people, instruments, places, ingredients and lots that entries and logs name are
 * known, and which lots a fault of a log touches.
 */
record ReferenceCheck(Plan plan, List<LotBuilder> lots) {

  private static final Message NO_SCALE = say("lot.instrument.no-scale", "a thermometer or logger");
  private static final Message OF_HUMIDITY =
      say("lot.instrument.humidity", "an instrument with its \"humidityAccuracy\" in the plan");

  private static final Message ANOTHER_KIND =
      say("lot.kind.expected", "a place of another kind, or its kind in the plan corrected");

  Stream<Fault> ofEntries(List<Entry> entries) {
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
  Stream<Fault> ofActions(List<Entry> actions) {
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
                        "{0} of no lot and of no place of the plan",
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

  private static Message inPlace(What what, Location place) {
    return say("lot.kind.found", "{0} in {1}, a {2}", what, place.id(), place.kind());
  }

  /** Smoke has its own places, and so has water; cured and chilled is in neither. */
  private static boolean suits(What what, String kind) {
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

  Stream<Fault> ofLogs(List<Series> logs) {
    return logs.stream().flatMap(this::ofLog);
  }

  /** A fault of a log's row is a fault of every lot that the log serves. */
  List<Fault> ofLots(List<Series> logs, Stream<Fault> faults) {
    Map<String, Set<String>> lotsOfFile = new HashMap<>();
    for (Series log : logs) {
      lotsOfFile.computeIfAbsent(log.file(), file -> new LinkedHashSet<>()).addAll(served(log));
    }
    return faults
        .flatMap(
            fault -> {
              Set<String> served = lotsOfFile.getOrDefault(fault.place().file(), Set.of());
              return fault.lot().isEmpty() && !served.isEmpty()
                  ? served.stream().map(fault::ofLot)
                  : Stream.of(fault);
            })
        .toList();
  }

  private Stream<Fault> ofLog(Series log) {
    Place place = new Place(log.file(), 0, log.column());
    Stream<Fault> ofPlace =
        Stream.of(log.place())
            .filter(named -> !named.isEmpty() && plan.location(named).isEmpty())
            .map(named -> ask("place", place, named, say("lot.log.place", "a place of the plan")));
    Stream<Fault> ofLots =
        log.lots().stream()
            .filter(named -> lots.stream().noneMatch(lot -> lot.code().equals(named)))
            .map(
                named ->
                    ask(
                        "lot",
                        place,
                        say("lot.log.unknown-lot", "{0}, which no sheet knows", named),
                        say("lot.log.lot", "a lot's code")));
    Stream<Fault> ofKind =
        plan.location(log.place()).stream()
            .filter(known -> !suits(log.what(), known.kind()))
            .map(
                known ->
                    Fault.ask(
                        "kind of place", "", place, inPlace(log.what(), known), ANOTHER_KIND));
    return Stream.of(ofInstrument(log, place), ofPlace, ofKind, ofLots)
        .flatMap(Function.identity());
  }

  private static Fault ask(String rule, Place place, Object found, Message expected) {
    return Fault.ask(rule, "", place, Message.of(found), expected);
  }

  /** A log of an instrument that can't have kept it is of no use to any lot that it serves. */
  private Stream<Fault> ofInstrument(Series log, Place place) {
    Message id = Message.of(log.instrument());
    Optional<Instrument> known = plan.instrument(log.instrument());
    if (known.isEmpty()) {
      return stops(log, place, id, say("lot.log.instrument", "an instrument of the plan"));
    }
    if (known.get().kind().equals("scale")) {
      Message scale = say("lot.instrument.is-a-scale", "{0}, a scale", log.instrument());
      return stops(log, place, scale, NO_SCALE);
    }
    return known.get().accuracyFor(log.unit().dimension()).isEmpty()
        ? stops(log, place, id, OF_HUMIDITY)
        : Stream.of();
  }

  private Stream<Fault> stops(Series log, Place place, Message found, Message expected) {
    Message inLayout = say("lot.log.in-layout", "{0}, in logs.json", expected);
    List<String> served = served(log);
    return (served.isEmpty() ? List.of("") : served)
        .stream().map(lot -> Fault.stop("instrument", lot, place, found, inLayout));
  }

  private List<String> served(Series log) {
    return lots.stream().filter(lot -> lot.isServedBy(log)).map(LotBuilder::code).toList();
  }
}

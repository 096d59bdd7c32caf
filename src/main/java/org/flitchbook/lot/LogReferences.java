package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;

/** Whether what logs name is known and can be, and which lots a fault of a log touches. */
final class LogReferences {

  private final Plan plan;
  private final List<LotBuilder> lots;
  private final Map<String, Integer> byCode = new HashMap<>();
  private final Map<String, Set<Integer>> byPlace = new HashMap<>();

  /**
   * @param lots all of them
   */
  LogReferences(Plan plan, List<LotBuilder> lots) {
    this.plan = plan;
    this.lots = lots;
    for (int i = 0; i < lots.size(); i++) {
      int number = i;
      byCode.put(lots.get(i).code(), number);
      lots.get(i)
          .places()
          .forEach(place -> byPlace.computeIfAbsent(place, p -> new TreeSet<>()).add(number));
    }
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
            .filter(named -> !byCode.containsKey(named))
            .map(
                named ->
                    ask(
                        "lot",
                        place,
                        say("lot.log.unknown-lot", "{0}, which no sheet knows", named),
                        say("lot.log.lot", "a lot's code")));
    Stream<Fault> ofKind =
        plan.location(log.place()).stream()
            .filter(known -> !ReferenceCheck.suits(log.what(), known.kind()))
            .map(
                known ->
                    Fault.ask(
                        "kind of place",
                        "",
                        place,
                        ReferenceCheck.inPlace(log.what(), known),
                        ReferenceCheck.ANOTHER_KIND));
    return Stream.of(ofInstrument(log, place), ofPlace, ofKind, ofLots, ofSeveralPlaces(log, place))
        .flatMap(Function.identity());
  }

  /** One sensor of the air can't have hung beside lots that lay in different places. */
  private Stream<Fault> ofSeveralPlaces(Series log, Place place) {
    Map<String, Set<String>> lay = new TreeMap<>();
    if (log.what().isOfPlace()) {
      log.lots().stream()
          .flatMap(code -> Stream.ofNullable(byCode.get(code)))
          .map(lots::get)
          .forEach(lot -> lay.put(lot.code(), airOf(lot, log)));
    }
    return Set.copyOf(lay.values()).size() < 2
        ? Stream.of()
        : lay.entrySet().stream()
            .map(
                each ->
                    Fault.ask(
                        "air of several places",
                        each.getKey(),
                        place,
                        say(
                            "lot.air.found",
                            "{0} of lots in different places, this one in {1}",
                            log.what(),
                            Listing.and(List.copyOf(each.getValue()))),
                        say("lot.air.expected", "the place that the sensor hung in, and no lots")));
  }

  /** The places whose air it may have read while the lot lay there. */
  private Set<String> airOf(LotBuilder lot, Series log) {
    return lot.placesDuring(log)
        .filter(
            id -> plan.location(id).filter(known -> isAirOf(log.what(), known.kind())).isPresent())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static boolean isAirOf(What what, String kind) {
    return switch (what) {
      case WATER_TEMPERATURE -> kind.equals("water");
      case COOLER_TEMPERATURE -> !kind.equals("water") && !kind.equals("smoker");
      default -> kind.equals("smoker");
    };
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
      return stops(log, place, scale, ReferenceCheck.NO_SCALE);
    }
    return known.get().accuracyFor(log.unit().dimension()).isEmpty()
        ? stops(log, place, id, ReferenceCheck.OF_HUMIDITY)
        : Stream.of();
  }

  private Stream<Fault> stops(Series log, Place place, Message found, Message expected) {
    Message inLayout = say("lot.log.in-layout", "{0}, in logs.json", expected);
    List<String> served = served(log);
    return (served.isEmpty() ? List.of("") : served)
        .stream().map(lot -> Fault.stop("instrument", lot, place, found, inLayout));
  }

  private List<String> served(Series log) {
    Set<Integer> candidates = new TreeSet<>(byPlace.getOrDefault(log.place(), Set.of()));
    log.lots().stream()
        .flatMap(code -> Stream.ofNullable(byCode.get(code)))
        .forEach(candidates::add);
    return candidates.stream()
        .map(lots::get)
        .filter(lot -> lot.isServedBy(log))
        .map(LotBuilder::code)
        .toList();
  }
}

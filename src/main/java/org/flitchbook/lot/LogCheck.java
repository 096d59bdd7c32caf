package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Series;

/** Whether the logs name what exists, and which lots a fault of a log touches. */
record LogCheck(Plan plan, List<Series> logs, List<LotBuilder> lots) {

  /**
   * The faults of the logs behind those found so far. A fault of a log's row is a fault of every
   * lot that the log serves.
   */
  List<Fault> faults(List<Fault> others) {
    Map<String, Set<String>> lotsOfFile = new HashMap<>();
    for (Series log : logs) {
      lotsOfFile.computeIfAbsent(log.file(), file -> new LinkedHashSet<>()).addAll(served(log));
    }
    return Stream.concat(others.stream(), logs.stream().flatMap(this::faults))
        .flatMap(fault -> ofLots(fault, lotsOfFile.getOrDefault(fault.place().file(), Set.of())))
        .toList();
  }

  private static Stream<Fault> ofLots(Fault fault, Set<String> lots) {
    return fault.lot().isEmpty() && !lots.isEmpty()
        ? lots.stream().map(fault::ofLot)
        : Stream.of(fault);
  }

  private Stream<Fault> faults(Series log) {
    Place place = new Place(log.file(), 0, log.column());
    Stream<Fault> ofPlace =
        Stream.of(log.place())
            .filter(named -> !named.isEmpty() && plan.room(named).isEmpty())
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
    return Stream.of(ofInstrument(log, place), ofPlace, ofLots).flatMap(faults -> faults);
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
    return lots.stream().filter(lot -> lot.isServedBy(log)).map(LotBuilder::code).toList();
  }
}

package org.flitchbook.lot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Series;
import org.flitchbook.words.Words;

/** Whether the logs name what exists, and which lots a fault of a log touches. */
final class Logs {

  private final Plan plan;
  private final Words words;
  private final List<Fault> faults;

  Logs(Plan plan, List<Fault> faults) {
    this.plan = plan;
    this.words = plan.words();
    this.faults = faults;
  }

  void check(List<Series> all, Map<String, LotDraft> drafts) {
    for (Series series : all) {
      Place place = new Place(series.file(), 0, series.column());
      checkInstrument(series, place, drafts);
      if (!series.place().isEmpty() && plan.room(series.place()).isEmpty()) {
        faults.add(
            Fault.ask(
                "place",
                "",
                place,
                series.place(),
                words.say("lot.log.place", "a place of the plan")));
      }
      for (String lot : series.lots()) {
        if (!drafts.containsKey(lot)) {
          faults.add(
              Fault.ask(
                  "lot",
                  "",
                  place,
                  words.say("lot.log.unknown-lot", "{0}, which no sheet knows", lot),
                  words.say("lot.log.lot", "a lot's code")));
        }
      }
    }
    touch(all, drafts);
  }

  private void checkInstrument(Series series, Place place, Map<String, LotDraft> drafts) {
    Optional<Instrument> known = plan.instrument(series.instrument());
    if (known.isEmpty()) {
      stop(
          series,
          place,
          drafts,
          series.instrument(),
          words.say("lot.log.instrument", "an instrument of the plan"));
    } else if (known.get().kind().equals("scale")) {
      String scale = words.say("lot.instrument.is-a-scale", "{0}, a scale", series.instrument());
      stop(
          series,
          place,
          drafts,
          scale,
          words.say("lot.instrument.no-scale", "a thermometer or logger"));
    } else if (known.get().accuracyFor(series.unit().dimension()).isEmpty()) {
      stop(
          series,
          place,
          drafts,
          series.instrument(),
          words.say(
              "lot.instrument.humidity",
              "an instrument with its \"humidityAccuracy\" in the plan"));
    }
  }

  private void stop(
      Series series, Place place, Map<String, LotDraft> drafts, String found, String expected) {
    List<String> lots = served(series, drafts);
    for (String lot : lots.isEmpty() ? List.of("") : lots) {
      faults.add(
          Fault.stop(
              "instrument",
              lot,
              place,
              found,
              words.say("lot.log.in-layout", "{0}, in logs.json", expected)));
    }
  }

  /** A fault of a log's row is a fault of every lot that the log serves. */
  private void touch(List<Series> all, Map<String, LotDraft> drafts) {
    Map<String, Set<String>> lotsOfFile = new HashMap<>();
    for (Series series : all) {
      lotsOfFile
          .computeIfAbsent(series.file(), file -> new LinkedHashSet<>())
          .addAll(served(series, drafts));
    }
    List<Fault> own = new ArrayList<>();
    for (Fault fault : faults) {
      Set<String> lots = lotsOfFile.getOrDefault(fault.place().file(), Set.of());
      if (fault.lot().isEmpty() && !lots.isEmpty()) {
        lots.forEach(lot -> own.add(fault.ofLot(lot)));
      } else {
        own.add(fault);
      }
    }
    faults.clear();
    faults.addAll(own);
  }

  private static List<String> served(Series series, Map<String, LotDraft> drafts) {
    return drafts.entrySet().stream()
        .filter(each -> each.getValue().isServedBy(series, each.getKey()))
        .map(Map.Entry::getKey)
        .toList();
  }
}

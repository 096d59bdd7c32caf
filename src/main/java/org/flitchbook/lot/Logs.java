package org.flitchbook.lot;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Series;

/** Whether the logs name what exists, and which lots a fault of a log touches. */
final class Logs {

  static final String HUMIDITY = "an instrument with its \"humidityAccuracy\" in the plan";

  private final Plan plan;
  private final List<Fault> faults;

  Logs(Plan plan, List<Fault> faults) {
    this.plan = plan;
    this.faults = faults;
  }

  void check(List<Series> all, Map<String, LotDraft> drafts) {
    for (Series series : all) {
      Place place = new Place(series.file(), 0, series.column());
      wanted(series)
          .ifPresent(
              wanted ->
                  served(series, drafts)
                      .forEach(
                          lot ->
                              faults.add(
                                  Fault.stop(
                                      "instrument", lot, place, series.instrument(), wanted))));
      if (!series.place().isEmpty() && plan.room(series.place()).isEmpty()) {
        faults.add(Fault.ask("place", "", place, series.place(), "a place of the plan"));
      }
      for (String lot : series.lots()) {
        if (!drafts.containsKey(lot)) {
          faults.add(Fault.ask("lot", "", place, lot + ", which no sheet knows", "a lot's code"));
        }
      }
    }
    touch(all, drafts);
  }

  /** What would do instead of the series' instrument; empty where it will do. */
  private Optional<String> wanted(Series series) {
    Optional<Instrument> instrument = plan.instrument(series.instrument());
    if (instrument.isEmpty()) {
      return Optional.of("an instrument of the plan, in logs.json");
    }
    return instrument.get().accuracyFor(series.unit().dimension()).isPresent()
        ? Optional.empty()
        : Optional.of(series.unit() == Unit.PERCENT ? HUMIDITY : "a thermometer or logger");
  }

  /** A fault of a log's row is a fault of every lot that the log serves. */
  private void touch(List<Series> all, Map<String, LotDraft> drafts) {
    List<Fault> own = new ArrayList<>();
    for (Fault fault : faults) {
      if (fault.lot().isEmpty()) {
        Set<String> lots = new LinkedHashSet<>();
        all.stream()
            .filter(series -> series.file().equals(fault.place().file()))
            .forEach(series -> lots.addAll(served(series, drafts)));
        lots.forEach(lot -> own.add(of(fault, lot)));
        if (lots.isEmpty()) {
          own.add(fault);
        }
      } else {
        own.add(fault);
      }
    }
    faults.clear();
    faults.addAll(own);
  }

  private static Fault of(Fault fault, String lot) {
    return new Fault(
        fault.rule(), fault.severity(), lot, fault.place(), fault.found(), fault.expected());
  }

  private static List<String> served(Series series, Map<String, LotDraft> drafts) {
    return drafts.entrySet().stream()
        .filter(each -> each.getValue().isServedBy(series, each.getKey()))
        .map(Map.Entry::getKey)
        .toList();
  }
}

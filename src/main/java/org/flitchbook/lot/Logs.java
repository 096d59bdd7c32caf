package org.flitchbook.lot;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Series;

/** Whether the logs name what exists, and which lots a fault of a log touches. */
final class Logs {

  private final Plan plan;
  private final List<Fault> faults;

  Logs(Plan plan, List<Fault> faults) {
    this.plan = plan;
    this.faults = faults;
  }

  void check(List<Series> all, Map<String, LotDraft> drafts) {
    for (Series series : all) {
      Place place = new Place(series.file(), 0, series.column());
      if (plan.instrument(series.instrument()).isEmpty()) {
        served(series, drafts)
            .forEach(
                lot ->
                    faults.add(
                        Fault.stop(
                            "instrument",
                            lot,
                            place,
                            series.instrument(),
                            "an instrument of the plan, in logs.json")));
      }
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

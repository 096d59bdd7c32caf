package org.flitchbook.doubt;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** What was read of one thing by hand during one step, in order of time. */
record HandReadings(List<Entry> entries) {

  HandReadings {
    entries = List.copyOf(entries);
  }

  /** All of a lot, those of the places that it lay in included. */
  static List<HandReadings> of(Lot lot) {
    Map<String, Map<Place, Entry>> all = new LinkedHashMap<>();
    for (Lot.StepTrack each : lot.tracks()) {
      for (int i = 0; i < each.track().size(); i++) {
        String of = each.step() + " " + each.track().what() + " " + each.track().room(i);
        each.track().entry(i).ifPresent(entry -> put(all, of, entry));
      }
    }
    return all.values().stream()
        .map(found -> new HandReadings(List.copyOf(found.values())))
        .toList();
  }

  /** A reading by hand lies in the track of every probe; it counts once. */
  private static void put(Map<String, Map<Place, Entry>> all, String of, Entry entry) {
    all.computeIfAbsent(of, key -> new LinkedHashMap<>()).put(entry.place(), entry);
  }

  int size() {
    return entries.size();
  }

  What what() {
    return entries.get(0).what();
  }
}

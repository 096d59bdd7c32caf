package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.reading.Entry;

/**
 * How something touched a lot: by one entry, or by all readings of one kind with an instrument.
 *
 * @param what the word of the sheets
 * @param item the ingredient, customer, place, probe or instrument
 * @param quantity as written; empty where there is none, or more than one
 * @param readings how many there are
 * @param place of the first
 */
record Touch(
    String what,
    String item,
    String quantity,
    Instant from,
    Instant to,
    int readings,
    Place place) {

  static Touch of(Entry entry) {
    Instant time = entry.time().written();
    return new Touch(
        entry.what().word(), entry.item(), entry.shown(), time, time, 1, entry.place());
  }

  /** All that was read with one instrument, one touch a kind of reading and probe. */
  static List<Touch> byInstrument(Lot lot, String id) {
    Map<String, List<Entry>> written = new LinkedHashMap<>();
    lot.entries().stream()
        .filter(entry -> entry.instrument().equalsIgnoreCase(id))
        .forEach(e -> written.computeIfAbsent(e.what().word(), w -> new ArrayList<>()).add(e));
    List<Touch> touches = new ArrayList<>();
    written.values().forEach(entries -> touches.add(of(id, entries)));
    lot.tracks().stream()
        .map(Lot.StepTrack::track)
        .filter(track -> track.instrument().equalsIgnoreCase(id))
        .map(Touch::of)
        .distinct()
        .forEach(touches::add);
    return touches;
  }

  private static Touch of(String instrument, List<Entry> entries) {
    Entry first = entries.get(0);
    Entry last = entries.get(entries.size() - 1);
    return new Touch(
        first.what().word(),
        instrument,
        entries.size() == 1 ? first.shown() : "",
        first.time().written(),
        last.time().written(),
        entries.size(),
        first.place());
  }

  private static Touch of(Track track) {
    return new Touch(
        track.what().word(),
        track.instrument() + " " + track.called(),
        "",
        Instant.ofEpochMilli(track.earliest(0)),
        Instant.ofEpochMilli(track.earliest(track.size() - 1)),
        track.size(),
        track.origin());
  }

  /** All instruments that a lot was weighed and read with. */
  static List<Touch> instruments(Lot lot) {
    Map<String, String> ids = new TreeMap<>();
    lot.entries().forEach(entry -> put(ids, entry.instrument()));
    lot.tracks().forEach(each -> put(ids, each.track().instrument()));
    Collection<String> all = ids.values();
    return all.stream().flatMap(id -> byInstrument(lot, id).stream()).toList();
  }

  private static void put(Map<String, String> ids, String id) {
    if (!id.isEmpty()) {
      ids.putIfAbsent(id.toLowerCase(Locale.ROOT), id);
    }
  }
}

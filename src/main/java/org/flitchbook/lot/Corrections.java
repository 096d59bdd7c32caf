package org.flitchbook.lot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;
import org.flitchbook.words.Words;

/**
 * Which entries replace which. A correction names a line: that of an entry of the same lot and
 * sheet about the same thing, or that of a row which could not be used. What was wrong with the
 * line that it replaces is printed and stops nothing any more.
 */
final class Corrections {

  private final Words words;
  private final List<Entry> all;
  private final List<Fault> faults;
  private final Map<String, Entry> byPlace = new HashMap<>();
  private final Map<String, Entry> replacing = new LinkedHashMap<>();

  /**
   * @param all every entry, in the order of the files
   * @param faults of the rows that could not be used; those of corrections are added
   */
  Corrections(Words words, List<Entry> all, List<Fault> faults) {
    this.words = words;
    this.all = all;
    this.faults = faults;
    all.forEach(entry -> byPlace.put(entry.place().toString(), entry));
    List.copyOf(all).stream().filter(entry -> !entry.corrects().isEmpty()).forEach(this::replace);
    faults.replaceAll(this::eased);
  }

  List<Entry> inForce() {
    return all.stream().filter(entry -> !replacing.containsKey(entry.place().toString())).toList();
  }

  List<Correction> of(String lot) {
    List<Correction> found = new ArrayList<>();
    replacing.forEach(
        (place, by) -> {
          Entry old = byPlace.get(place);
          if (old != null && old.lot().equals(lot)) {
            found.add(new Correction(old, by));
          }
        });
    return found;
  }

  private void replace(Entry entry) {
    String line = line(entry);
    Entry old = byPlace.get(line);
    Entry other = replacing.get(line);
    if (old == null ? !isRefused(line, entry.lot()) : !isLike(old, entry)) {
      String about = words.word("what", entry.what().word());
      stop(
          entry,
          entry.corrects(),
          words.say(
              "lot.correction.of-the-same",
              "file:line of an entry of the same lot and sheet about {0}",
              about));
    } else if (old != null && leadsTo(old, entry)) {
      String back =
          words.say(
              "lot.correction.leads-back", "{0}, which leads back to this entry", entry.corrects());
      stop(entry, back, words.say("lot.correction.earlier", "an earlier entry"));
    } else if (other != null) {
      String already =
          words.say(
              "lot.correction.already",
              "{0}, which {1} corrects already",
              entry.corrects(),
              other.place());
      stop(entry, already, words.say("lot.correction.in-force", "file:line of the entry in force"));
    } else {
      replacing.put(line, entry);
    }
  }

  /** The line that an entry corrects: with its day's folder, or in the same folder. */
  private String line(Entry entry) {
    String file = entry.place().file();
    String inFolder = file.substring(0, file.lastIndexOf('/') + 1) + entry.corrects();
    return byPlace.containsKey(entry.corrects()) || isRefused(entry.corrects(), entry.lot())
        ? entry.corrects()
        : inFolder;
  }

  private static boolean isLike(Entry old, Entry entry) {
    return old.lot().equals(entry.lot()) && old.is(entry.what()) && old.sheet() == entry.sheet();
  }

  private boolean leadsTo(Entry old, Entry entry) {
    Optional<Entry> at = Optional.of(old);
    for (int steps = 0; at.isPresent() && steps <= all.size(); steps++) {
      if (at.get().equals(entry)) {
        return true;
      }
      at =
          at.filter(each -> !each.corrects().isEmpty())
              .flatMap(each -> Optional.ofNullable(byPlace.get(line(each))));
    }
    return false;
  }

  /** Whether a row of a sheet could not be used, and is of that lot as far as it can be told. */
  private boolean isRefused(String line, String lot) {
    return faults.stream()
        .filter(Fault::isOpen)
        .filter(fault -> lineOf(fault.place()).equals(line))
        .filter(fault -> isOfSheet(fault.place()))
        .anyMatch(fault -> fault.lot().isEmpty() || fault.lot().equals(lot));
  }

  private static boolean isOfSheet(Place place) {
    String baseName = SourceFile.of(place.file(), new byte[0]).baseName();
    return Sheet.ofFile(baseName).isPresent();
  }

  private static String lineOf(Place place) {
    return Place.of(place.file(), place.line()).toString();
  }

  private Fault eased(Fault fault) {
    Entry by = replacing.get(lineOf(fault.place()));
    if (by == null || !fault.isOpen() || !isOfSheet(fault.place())) {
      return fault;
    }
    return Fault.note(
        fault.rule(),
        fault.lot(),
        fault.place(),
        fault.found(),
        Message.say(
            "lot.correction.replaced", "{0}; replaced by {1}", fault.expected(), by.place()));
  }

  private void stop(Entry entry, String found, String expected) {
    faults.add(
        Fault.stop("correction", entry.lot(), entry.place().column("corrects"), found, expected));
  }
}

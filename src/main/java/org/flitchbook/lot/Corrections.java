package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Sheet;

/**
 * Which entries replace which. A correction names a line: that of an entry of the same lot and
 * sheet about the same thing, or that of a row which could not be used. What was wrong with the
 * line that it replaces is printed and stops nothing any more.
 */
final class Corrections {

  private final List<Entry> all;
  private final List<Fault> faults = new ArrayList<>();
  private final Map<String, Entry> byPlace = new HashMap<>();
  private final Map<String, Entry> replacing = new LinkedHashMap<>();

  /**
   * @param all every entry, in the order of the files
   * @param faults of the rows that could not be used
   */
  Corrections(List<Entry> all, List<Fault> faults) {
    this.all = all;
    this.faults.addAll(faults);
    all.forEach(entry -> byPlace.put(entry.place().toString(), entry));
    all.stream().filter(entry -> !entry.corrects().isEmpty()).forEach(this::replace);
    this.faults.replaceAll(this::eased);
  }

  List<Entry> inForce() {
    return all.stream().filter(entry -> !replacing.containsKey(entry.place().toString())).toList();
  }

  /** The faults of the rows, eased where a row is replaced, and those of the corrections. */
  List<Fault> faults() {
    return faults;
  }

  List<Lot.Correction> of(String lot) {
    return replacing.entrySet().stream()
        .flatMap(
            each ->
                Stream.ofNullable(byPlace.get(each.getKey()))
                    .filter(old -> old.lot().equals(lot))
                    .map(old -> new Lot.Correction(old, each.getValue())))
        .toList();
  }

  private void replace(Entry entry) {
    String line = line(entry);
    Entry old = byPlace.get(line);
    Entry other = replacing.get(line);
    if (old == null ? !isRefused(line, entry.lot()) : !isLike(old, entry)) {
      stop(
          entry,
          Message.of(entry.corrects()),
          say(
              "lot.correction.of-the-same",
              "file:line of an entry of the same lot and sheet about {0}",
              entry.what()));
    } else if (old != null && leadsTo(old, entry)) {
      stop(
          entry,
          say("lot.correction.leads-back", "{0}, which leads back to this entry", entry.corrects()),
          say("lot.correction.earlier", "an earlier entry"));
    } else if (other != null) {
      stop(
          entry,
          say(
              "lot.correction.already",
              "{0}, which {1} corrects already",
              entry.corrects(),
              other.place()),
          say("lot.correction.in-force", "file:line of the entry in force"));
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
        say("lot.correction.replaced", "{0}; replaced by {1}", fault.expected(), by.place()));
  }

  private void stop(Entry entry, Message found, Message expected) {
    faults.add(
        Fault.stop("correction", entry.lot(), entry.place().column("corrects"), found, expected));
  }
}

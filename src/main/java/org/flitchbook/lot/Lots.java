package org.flitchbook.lot;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;

/** Puts the readings of many days together into lots. */
public final class Lots {

  private final Plan plan;
  private final List<Fault> faults = new ArrayList<>();
  private final Map<String, List<Entry>> entriesOfLot = new TreeMap<>();
  private final Map<String, List<Correction>> corrections = new HashMap<>();
  private final Map<String, SortedSet<LocalDate>> filed = new HashMap<>();

  private Lots(Plan plan) {
    this.plan = plan;
  }

  /**
   * Assembles every lot that the days name.
   *
   * @param days in order, up to the day judged
   * @param until readings after this are not looked at
   */
  public static Assembled assemble(Plan plan, List<Day> days, Instant until) {
    return new Lots(plan).assemble(days, until);
  }

  private Assembled assemble(List<Day> days, Instant until) {
    days.forEach(day -> faults.addAll(day.faults()));
    List<Entry> all =
        days.stream()
            .flatMap(day -> day.entries().stream())
            .filter(entry -> !entry.time().earliest().isAfter(until))
            .toList();
    new Membership(plan, faults).check(all);
    List<Entry> inForce = corrected(all);
    Register register = new RegisterReader(plan, faults).read(inForce);
    List<Series> series = days.stream().flatMap(day -> day.series().stream()).toList();
    for (Entry entry : inForce) {
      if (!entry.lot().isEmpty()) {
        entriesOfLot.computeIfAbsent(entry.lot(), code -> new ArrayList<>()).add(entry);
      }
    }
    note(days);
    Timeline timeline = new Timeline(plan, register, inForce, series, until);
    Map<String, LotDraft> drafts = new LinkedHashMap<>();
    entriesOfLot.forEach((code, entries) -> drafts.put(code, new LotDraft(timeline, entries)));
    new Logs(plan, faults).check(series, drafts);
    return new Assembled(
        drafts.entrySet().stream().map(each -> lot(each.getKey(), each.getValue())).toList(),
        register,
        faults.stream().filter(fault -> !entriesOfLot.containsKey(fault.lot())).toList());
  }

  private Lot lot(String code, LotDraft draft) {
    List<Entry> entries = entriesOfLot.getOrDefault(code, List.of());
    Optional<Product> product = product(code, entries);
    checkOnce(code, entries);
    return new Lot(
        code,
        product,
        entries,
        corrections.getOrDefault(code, List.of()),
        draft.stays(),
        draft.tracks(),
        Stream.concat(faults.stream(), draft.faults().stream())
            .filter(fault -> fault.lot().equals(code))
            .distinct()
            .toList(),
        filed.getOrDefault(code, new TreeSet<>()));
  }

  private void note(List<Day> days) {
    for (Day day : days) {
      Stream<String> named =
          Stream.concat(
              day.entries().stream().map(Entry::lot),
              day.series().stream().flatMap(series -> series.lots().stream()));
      named
          .filter(entriesOfLot::containsKey)
          .forEach(code -> filed.computeIfAbsent(code, k -> new TreeSet<>()).add(day.date()));
    }
  }

  private List<Entry> corrected(List<Entry> all) {
    Map<String, Entry> byPlace = new HashMap<>();
    all.forEach(entry -> byPlace.put(entry.place().toString(), entry));
    List<Entry> inForce = new ArrayList<>(all);
    for (Entry entry : all) {
      if (!entry.corrects().isEmpty()) {
        replaced(entry, byPlace)
            .ifPresent(
                old -> {
                  inForce.remove(old);
                  corrections
                      .computeIfAbsent(old.lot(), code -> new ArrayList<>())
                      .add(new Correction(old, entry));
                });
      }
    }
    return inForce;
  }

  /** The entry that a correction names: with its day's folder, or in the same folder. */
  private Optional<Entry> replaced(Entry entry, Map<String, Entry> byPlace) {
    String file = entry.place().file();
    String folder = file.substring(0, file.lastIndexOf('/') + 1);
    Entry old = byPlace.getOrDefault(entry.corrects(), byPlace.get(folder + entry.corrects()));
    if (old == null || !old.lot().equals(entry.lot()) || !old.is(entry.what())) {
      faults.add(
          Fault.stop(
              "correction",
              entry.lot(),
              entry.place().column("corrects"),
              entry.corrects(),
              "file:line of an entry of the same lot about " + entry.what().word()));
      return Optional.empty();
    }
    return Optional.of(old);
  }

  private Optional<Product> product(String code, List<Entry> entries) {
    List<Entry> named = entries.stream().filter(entry -> entry.is(What.PRODUCT)).toList();
    Optional<Product> product =
        named.stream().findFirst().flatMap(entry -> plan.product(entry.item()));
    String codes = String.join(", ", plan.products().stream().map(Product::code).toList());
    if (named.isEmpty() && !entries.isEmpty()) {
      Entry first =
          entries.stream().min(Comparator.comparing(e -> e.time().earliest())).orElseThrow();
      faults.add(
          Fault.stop("product", code, first.place(), "no entry \"product\"", "one of " + codes));
    } else if (product.isEmpty() && !named.isEmpty()) {
      Entry entry = named.get(0);
      faults.add(
          Fault.stop(
              "product", code, entry.place().column("item"), entry.item(), "one of " + codes));
    }
    return product;
  }

  /** Green weight and rind are of a piece and can't add up; a second one needs a correction. */
  private void checkOnce(String code, List<Entry> entries) {
    Map<String, Entry> seen = new HashMap<>();
    for (Entry entry : entries) {
      if (entry.is(What.GREEN_WEIGHT) || entry.is(What.RIND_WEIGHT) || entry.is(What.PRODUCT)) {
        Entry before = seen.putIfAbsent(entry.what() + " " + entry.piece(), entry);
        if (before != null) {
          faults.add(
              Fault.stop(
                  "entry twice",
                  code,
                  entry.place().column("what"),
                  "a second " + entry.what().word() + " beside " + before.place(),
                  "\"corrects\" naming the one that it replaces, or a piece"));
        }
      }
    }
  }
}

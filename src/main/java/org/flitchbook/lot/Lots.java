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
import org.flitchbook.reading.Readings;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;

/** Puts the readings of many days together into lots. */
public final class Lots {

  private final Plan plan;
  private final List<Fault> faults = new ArrayList<>();
  private final Map<String, List<Entry>> entriesOfLot = new TreeMap<>();
  private final Map<String, SortedSet<LocalDate>> filed = new HashMap<>();

  private Lots(Plan plan) {
    this.plan = plan;
  }

  /**
   * Assembles every lot that the days name.
   *
   * @param days in order, up to the day judged
   * @param until readings after this are not looked at; a correction counts whatever its time,
   *     since it says what was true
   */
  public static Assembled assemble(Plan plan, List<Day> days, Instant until) {
    return new Lots(plan).assemble(days, until);
  }

  private Assembled assemble(List<Day> days, Instant until) {
    days.forEach(day -> faults.addAll(day.faults()));
    List<Entry> all = days.stream().flatMap(day -> day.entries().stream()).toList();
    Corrections corrections = new Corrections(plan.words(), all, faults);
    List<Entry> inForce =
        corrections.inForce().stream()
            .filter(entry -> !entry.time().earliest().isAfter(until))
            .toList();
    new Membership(plan, faults).check(inForce);
    Register register = new RegisterReader(plan, faults).read(inForce);
    List<Series> read = days.stream().flatMap(day -> day.series().stream()).toList();
    List<Series> joined = Readings.joined(read, faults);
    for (Entry entry : inForce) {
      if (!entry.lot().isEmpty()) {
        entriesOfLot.computeIfAbsent(entry.lot(), code -> new ArrayList<>()).add(entry);
      }
    }
    note(days);
    Timeline timeline = new Timeline(plan, register, inForce, joined, until);
    Map<String, LotDraft> drafts = new LinkedHashMap<>();
    entriesOfLot.forEach((code, entries) -> drafts.put(code, new LotDraft(timeline, entries)));
    new Logs(plan, faults).check(read, drafts);
    return new Assembled(
        drafts.entrySet().stream()
            .map(each -> lot(each.getKey(), each.getValue(), corrections))
            .toList(),
        register,
        faults.stream().filter(fault -> !entriesOfLot.containsKey(fault.lot())).toList());
  }

  private Lot lot(String code, LotDraft draft, Corrections corrections) {
    List<Entry> entries = entriesOfLot.getOrDefault(code, List.of());
    Optional<Product> product = product(code, entries);
    checkOnce(code, entries);
    return new Lot(
        code,
        product,
        entries,
        corrections.of(code),
        draft.stays(),
        draft.tracks(),
        Stream.of(faults, draft.faults(), draft.silent(code))
            .flatMap(List::stream)
            .filter(fault -> fault.lot().equals(code))
            .distinct()
            .toList(),
        filed.getOrDefault(code, new TreeSet<>()),
        draft.logs(code));
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

  private Optional<Product> product(String code, List<Entry> entries) {
    List<Entry> named = entries.stream().filter(entry -> entry.is(What.PRODUCT)).toList();
    Optional<Product> product =
        named.stream().findFirst().flatMap(entry -> plan.product(productCode(entry)));
    String codes = String.join(", ", plan.products().stream().map(Product::code).toList());
    if (named.isEmpty() && !entries.isEmpty()) {
      Entry first =
          entries.stream().min(Comparator.comparing(e -> e.time().earliest())).orElseThrow();
      faults.add(
          Fault.stop(
              "product",
              code,
              first.place(),
              plan.words().say("lot.product.none", "no entry \"product\""),
              plan.words().say("lot.product.one-of", "one of {0}", codes)));
    } else if (product.isEmpty() && !named.isEmpty()) {
      Entry entry = named.get(0);
      faults.add(
          Fault.stop(
              "product",
              code,
              entry.place(),
              productCode(entry),
              plan.words().say("lot.product.one-of", "one of {0}", codes)));
    }
    return product;
  }

  /** The product is named as the item; as the value it is understood too. */
  private static String productCode(Entry entry) {
    return entry.item().isEmpty() ? entry.value() : entry.item();
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
                  plan.words()
                      .say(
                          "lot.twice.second",
                          "a second {0} beside {1}",
                          plan.words().word("what", entry.what().word()),
                          before.place()),
                  plan.words()
                      .say(
                          "lot.twice.corrects",
                          "\"corrects\" naming the one that it replaces, or a piece")));
        }
      }
    }
  }
}

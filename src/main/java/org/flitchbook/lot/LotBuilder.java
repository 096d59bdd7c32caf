package org.flitchbook.lot;

import static org.flitchbook.message.Message.say;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.What;

/**
 * A lot while its steps and tracks are being worked out.
 *
 * @param entries its own, at least one
 */
record LotBuilder(Shared shared, String code, List<Entry> entries, List<Stay> stays) {

  LotBuilder(Shared shared, String code, List<Entry> entries) {
    this(shared, code, entries, Stay.all(entries));
  }

  /** Whether a log is of the lot; one that gave no reading while the lot lay there is, too. */
  boolean isServedBy(Series series) {
    return series.lots().contains(code)
        || visits(stays.stream())
            .anyMatch(
                visit ->
                    visit.place().equals(series.place())
                        && (overlaps(visit, series)
                            || series.samples().silentAt().anyMatch(visit::holds)));
  }

  /** Whether an entry names its product. */
  boolean isBegun() {
    return named().isPresent();
  }

  /** Whether it is in a step: gone in, not come out, and in no later step. */
  boolean isRunning() {
    return stays.stream().anyMatch(stay -> Stay.isRunning(stay.step(), stays));
  }

  /** Where it lay. */
  Stream<String> places() {
    return visits(stays.stream()).map(Stay.Visit::place);
  }

  /** Where it lay while a log was kept. */
  Stream<String> placesDuring(Series series) {
    return visits(stays.stream()).filter(visit -> overlaps(visit, series)).map(Stay.Visit::place);
  }

  private static Stream<Stay.Visit> visits(Stream<Stay> stays) {
    return stays.flatMap(stay -> stay.visits().stream());
  }

  private static boolean overlaps(Stay.Visit visit, Series series) {
    Samples samples = series.samples();
    int first = samples.firstAt(visit.from().earliest().toEpochMilli());
    return first < samples.size() && visit.holds(samples.at(first));
  }

  /**
   * The lot.
   *
   * @param faults of its entries and logs
   */
  Lot lot(List<Lot.Correction> corrections, SortedSet<LocalDate> filed, List<Fault> faults) {
    List<Series> logs = shared.seriesOf(code);
    return new Lot(
        code,
        product(),
        entries,
        corrections,
        stays,
        new TrackBuilder(shared, entries, stays).tracks(),
        Stream.of(
                faults.stream(),
                ofProduct(),
                twice().stream(),
                stays.stream().filter(Stay::goesBack).map(LotBuilder::backwards),
                silent(logs),
                foundInPlaces(),
                unknownBefore(logs))
            .flatMap(each -> each)
            .distinct()
            .toList(),
        filed,
        logs);
  }

  private Optional<Entry> named() {
    return entries.stream().filter(entry -> entry.is(What.PRODUCT)).findFirst();
  }

  private Optional<Product> product() {
    return named().flatMap(entry -> shared.plan().product(productCode(entry)));
  }

  /** The product is named as the item; as the value it is understood too. */
  private static String productCode(Entry entry) {
    return entry.item().isEmpty() ? entry.value() : entry.item();
  }

  private Stream<Fault> ofProduct() {
    if (product().isPresent()) {
      return Stream.empty();
    }
    Message expected =
        say(
            "lot.product.one-of",
            "one of {0}",
            Listing.commas(shared.plan().products().stream().map(Product::code).toList()));
    Message found =
        named()
            .map(entry -> Message.of(productCode(entry)))
            .orElse(say("lot.product.none", "no entry \"product\""));
    Entry first =
        entries.stream().min(Comparator.comparing(e -> e.time().earliest())).orElseThrow();
    return Stream.of(Fault.stop("product", code, named().orElse(first).place(), found, expected));
  }

  /**
   * Green weight and rind are of a piece and can't add up; a second one needs a correction, and
   * that of a piece can't stand beside that of the whole lot.
   */
  private List<Fault> twice() {
    List<Fault> faults = new ArrayList<>();
    Map<String, Entry> seen = new HashMap<>();
    for (Entry entry : entries) {
      if (entry.is(What.GREEN_WEIGHT) || entry.is(What.RIND_WEIGHT) || entry.is(What.PRODUCT)) {
        Entry before = seen.putIfAbsent(entry.what() + " " + entry.piece(), entry);
        if (before == null && entry.is(What.GREEN_WEIGHT) && !entry.piece().isEmpty()) {
          before = seen.get(entry.what() + " ");
        }
        if (before != null) {
          faults.add(
              Fault.stop(
                  "entry twice",
                  code,
                  entry.place().column("what"),
                  say("lot.twice.second", "a second {0} beside {1}", entry.what(), before.place()),
                  say(
                      "lot.twice.corrects",
                      "\"corrects\" naming the one that it replaces, or a piece")));
        }
      }
    }
    return faults;
  }

  /** What was found or held of a place while it lay there, and not closed since. */
  private Stream<Fault> foundInPlaces() {
    return shared.actions().stream()
        .filter(entry -> visits(stays.stream()).anyMatch(visit -> isIn(visit, entry)))
        .map(
            entry ->
                Fault.ask(
                    "found in its place",
                    code,
                    entry.place(),
                    say(
                        "lot.place.found",
                        "a row \"{0}\" of {1}, where the lot lay: {2}",
                        entry.what(),
                        entry.item(),
                        entry.shown()),
                    say(
                        "lot.place.expected",
                        "\"closed\" of the same place once it is settled, and what it means for"
                            + " the lot")));
  }

  private static boolean isIn(Stay.Visit visit, Entry entry) {
    return visit.place().equals(entry.item())
        && visit.holds(entry.time().earliest().toEpochMilli());
  }

  private static Fault backwards(Stay stay) {
    Entry out = stay.out().orElseThrow();
    return Fault.stop(
        "time goes back",
        out.lot(),
        out.place().column("time"),
        say(
            "lot.back.before",
            "{0} before {1} ({2})",
            out.what(),
            stay.into().what(),
            stay.into().place()),
        say("lot.back.later", "a later time"));
  }

  /** The probes that logs name for the lot and of which nothing was read in the heat. */
  private Stream<Fault> silent(List<Series> logs) {
    List<Stay.Visit> heat =
        visits(stays.stream().filter(Stay::isHeat).filter(stay -> stay.out().isPresent())).toList();
    return logs.stream()
        .filter(series -> !heat.isEmpty() && series.what() == What.INTERNAL_TEMPERATURE)
        .filter(series -> heat.stream().noneMatch(visit -> overlaps(visit, series)))
        .map(
            series ->
                Fault.stop(
                    "probe without a reading",
                    code,
                    Place.of(series.file()),
                    say(
                        "lot.log.silent",
                        "no reading of {0} (column {1}) while the lot was smoked and chilled",
                        series.called(),
                        series.column()),
                    say(
                        "lot.log.every-probe",
                        "readings of every probe that logs.json names for the lot")));
  }

  /** The probes that are said to go on for one that no log of the lot has. */
  private Stream<Fault> unknownBefore(List<Series> logs) {
    return logs.stream()
        .filter(series -> !series.continues().isEmpty())
        .filter(series -> logs.stream().noneMatch(log -> log.called().equals(series.continues())))
        .map(
            series ->
                Fault.ask(
                    "probe",
                    code,
                    new Place(series.file(), 0, series.column()),
                    say(
                        "lot.log.continues",
                        "{0} continues {1}, which no log of the lot has",
                        series.called(),
                        series.continues()),
                    say("lot.log.called", "the item of the probe that was taken out")));
  }
}

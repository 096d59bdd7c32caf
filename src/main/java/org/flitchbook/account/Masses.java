package org.flitchbook.account;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount.RindOff;
import org.flitchbook.account.LotAccount.Yield;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Base;
import org.flitchbook.sums.MassBalance;
import org.flitchbook.sums.Yields;

/** The masses of a lot: its weights step by step, and what became of the last of them. */
record Masses(Lot lot) {

  List<Yield> yields() {
    return lot.entries().stream().filter(Masses::isWeight).map(this::yieldOf).toList();
  }

  private static boolean isWeight(Entry entry) {
    return entry.is(What.GREEN_WEIGHT) || entry.is(What.WEIGHT) || entry.is(What.GLAZED);
  }

  private Yield yieldOf(Entry entry) {
    List<Stage> chain = upTo(entry);
    return new Yield(
        entry,
        yields(chain.stream()).map(Yields::steps).map(steps -> steps.get(steps.size() - 1).value()),
        entry.is(What.GREEN_WEIGHT)
            ? Optional.of(Quantity.of(100, Unit.PERCENT))
            : yields(chain.stream().dropWhile(stage -> !stage.green()))
                .map(yields -> yields.total().value()));
  }

  private static Optional<Yields> yields(Stream<Stage> chain) {
    return Optional.of(chain.map(Stage::weight).toList())
        .filter(weights -> weights.size() > 1)
        .map(Yields::of);
  }

  private record Stage(boolean green, Quantity weight) {}

  /**
   * The weights of the same piece up to this one, each with its stage; nothing weighed as 0 has a
   * yield. Where the whole lot is weighed, what was weighed in pieces before is added up.
   */
  private List<Stage> upTo(Entry last) {
    return lot.entries().subList(0, lot.entries().indexOf(last) + 1).stream()
        .filter(entry -> isWeight(entry) && entry.amount().value().signum() > 0)
        .collect(
            Collectors.groupingBy(
                e -> e.is(What.WEIGHT) ? e.sheet().word() : e.what().word(),
                LinkedHashMap::new,
                Collectors.toList()))
        .values()
        .stream()
        .flatMap(stage -> ofPiece(stage, last.piece()))
        .toList();
  }

  private static Stream<Stage> ofPiece(List<Entry> stage, String piece) {
    boolean green = stage.get(0).is(What.GREEN_WEIGHT);
    List<Entry> own = stage.stream().filter(entry -> entry.piece().equals(piece)).toList();
    return own.isEmpty() && piece.isEmpty()
        ? Stream.of(new Stage(green, total(lastOfEachPiece(stage))))
        : own.stream().map(entry -> new Stage(green, entry.amount()));
  }

  private static List<Entry> lastOfEachPiece(List<Entry> entries) {
    Map<String, Entry> last = new LinkedHashMap<>();
    entries.forEach(entry -> last.put(entry.piece(), entry));
    return List.copyOf(last.values());
  }

  /** Of each piece that was weighed with its rind on, and the rind by itself. */
  List<RindOff> rinds() {
    return lot.all(What.GREEN_WEIGHT).stream().flatMap(green -> rind(green).stream()).toList();
  }

  private Optional<RindOff> rind(Entry green) {
    boolean on =
        last(What.RIND, entry -> isStatedOf(green, entry))
            .filter(entry -> entry.value().equalsIgnoreCase("on"))
            .isPresent();
    return last(What.RIND_WEIGHT, entry -> entry.piece().equals(green.piece()))
        .map(Entry::amount)
        .filter(rind -> on && rind.isBelow(green.amount()))
        .map(rind -> Base.lessRind(green.amount(), rind))
        .map(
            base ->
                new RindOff(
                    green, base, Yields.of(List.of(green.amount(), base.mass())).total().value()));
  }

  /** The last statement about the piece that stood when it was weighed counts. */
  private static boolean isStatedOf(Entry green, Entry rind) {
    return (rind.piece().equals(green.piece()) || rind.piece().isEmpty())
        && !green.time().isBefore(rind.time());
  }

  private Optional<Entry> last(What what, Predicate<Entry> wanted) {
    return lot.all(what).stream().filter(wanted).reduce((earlier, later) -> later);
  }

  /** Of the last weight; empty where nothing was packed, cut off or thrown away. */
  Optional<LotAccount.PackedBalance> balance() {
    boolean parted =
        Stream.of(What.PACKED, What.ENDS, What.WASTE, What.SAMPLE)
            .anyMatch(what -> lot.first(what).isPresent());
    return lot.last(What.WEIGHT).filter(last -> parted).map(this::balance);
  }

  private LotAccount.PackedBalance balance(Entry last) {
    // Of a lot in pieces what each weighed after that step.
    List<Entry> weighed =
        lastOfEachPiece(
            lot.all(What.WEIGHT).stream()
                .filter(entry -> entry.sheet() == last.sheet())
                .filter(entry -> entry.piece().isEmpty() == last.piece().isEmpty())
                .toList());
    MassBalance masses =
        new MassBalance(
            total(weighed),
            total(lot.all(What.PACKED)),
            total(lot.all(What.ENDS)),
            total(lot.all(What.WASTE)),
            total(lot.all(What.SAMPLE)));
    return new LotAccount.PackedBalance(
        last,
        masses,
        masses.unexplained(),
        masses.unexplainedShare().value(),
        places(weighed, What.PACKED, What.ENDS, What.WASTE, What.SAMPLE));
  }

  LotAccount.Distribution distribution() {
    What[] parts = {What.PACKED, What.DISPATCHED, What.RETURNED, What.DESTROYED};
    List<Optional<Quantity>> sums = Stream.of(parts).map(this::sum).toList();
    List<Quantity> known = sums.stream().flatMap(Optional::stream).toList();
    // Packed − dispatched + returned − destroyed.
    Optional<Quantity> left =
        known.size() < parts.length
            ? Optional.empty()
            : Optional.of(known.get(0).minus(known.get(1)).minus(known.get(3).minus(known.get(2))));
    return new LotAccount.Distribution(
        sum(What.GREEN_WEIGHT),
        sums.get(0),
        sums.get(1),
        sums.get(2),
        sums.get(3),
        left,
        places(lot.all(What.GREEN_WEIGHT), parts));
  }

  LotAccount.HeldMass held() {
    List<Entry> held = withMass(What.HELD);
    Optional<Quantity> mass =
        held.isEmpty()
            ? lot.last(What.WEIGHT).map(Entry::amount)
            : Optional.of(total(held).in(Unit.GRAM));
    Quantity disposed = total(withMass(What.DISPOSITION));
    return new LotAccount.HeldMass(
        mass, lot.all(What.DISPOSITION), mass.map(m -> m.in(Unit.GRAM).minus(disposed)));
  }

  private List<Entry> withMass(What what) {
    return lot.all(what).stream().filter(entry -> entry.quantity().isPresent()).toList();
  }

  /** In g; 0 g of none; empty where one of them has no mass. */
  private Optional<Quantity> sum(What what) {
    List<Entry> entries = lot.all(what);
    return withMass(what).size() == entries.size()
        ? Optional.of(total(entries).in(Unit.GRAM))
        : Optional.empty();
  }

  /** Of entries that all have a mass: in g, or as it is written where there is but one. */
  private static Quantity total(List<Entry> entries) {
    return entries.size() == 1
        ? entries.get(0).amount()
        : new Quantity(
            entries.stream().map(entry -> entry.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus),
            Unit.GRAM);
  }

  private List<Place> places(List<Entry> weighed, What... whats) {
    return Stream.concat(weighed.stream(), Stream.of(whats).flatMap(what -> lot.all(what).stream()))
        .map(Entry::place)
        .toList();
  }
}

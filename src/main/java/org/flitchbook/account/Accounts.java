package org.flitchbook.account;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.account.LotAccount.Deviation;
import org.flitchbook.account.LotAccount.InstrumentState;
import org.flitchbook.account.LotAccount.Keeping;
import org.flitchbook.account.LotAccount.MarginShare;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The accounts of a day's lots, each added up once. */
public final class Accounts {

  private final Plan plan;
  private final Register register;
  private final LocalDate day;
  private final Instant moment;
  private final Optional<Duration> lateAfter;
  private final Map<String, LotAccount> lots = new ConcurrentHashMap<>();

  /**
   * Prepares the accounts by the plan of today; nothing is added up yet.
   *
   * @param lateAfter how long after the event an entry may be typed; empty where no rule says so
   */
  public Accounts(
      Plan plan, Register register, LocalDate day, Instant moment, Optional<Duration> lateAfter) {
    this.plan = plan;
    this.register = register;
    this.day = day;
    this.moment = moment;
    this.lateAfter = lateAfter;
  }

  /** The account of one lot of the day. */
  public LotAccount lot(Judgement judgement) {
    return lots.computeIfAbsent(judgement.lot().code(), code -> added(judgement));
  }

  /** The account of some lots of the day together. */
  public DayAccount day(List<Judgement> judgements) {
    List<Judgement> held = judgements.stream().filter(e -> !e.deviations().isEmpty()).toList();
    return new DayAccount(
        judgements.size(),
        judgements.stream()
            .collect(
                Collectors.groupingBy(
                    Judgement::verdict, TreeMap::new, Collectors.summingInt(each -> 1))),
        held.stream().mapToInt(each -> each.deviations().size()).sum(),
        held.stream().map(each -> each.lot().code()).toList(),
        keeping(judgements.stream().map(Judgement::lot).toList()));
  }

  /**
   * What is added up about several lots.
   *
   * @param verdicts how many lots have each verdict, from the worst, where any has it
   * @param held the lots with a deviation
   * @param keepUntil empty where no rule of the regime is known
   */
  public record DayAccount(
      int lots,
      SortedMap<Verdict, Integer> verdicts,
      int deviations,
      List<String> held,
      Optional<Keeping> keepUntil) {}

  /** Follows a code through all lots of the book; empty where neither they nor the plan know it. */
  public Optional<Trace> trace(List<Judgement> all, String code) {
    return Trace.of(plan, register, all, code);
  }

  private LotAccount added(Judgement judgement) {
    Lot lot = judgement.lot();
    Unit temperature = plan.establishment().temperature();
    List<ProbeReadings> readings =
        lot.tracks().stream().map(each -> ProbeReadings.of(each, temperature)).toList();
    List<InstrumentState> instruments = instruments(lot);
    Masses masses = new Masses(lot);
    return new LotAccount(
        lot.stays(),
        new TimeAbove.WarmTime(lot, plan).timeAbove(),
        masses.yields(),
        masses.rinds(),
        masses.balance(),
        masses.distribution(),
        masses.held(),
        keeping(List.of(lot)),
        reviewedAfter(lot),
        evidence(lot, readings, instruments),
        open(judgement),
        judgement.deviations().stream().map(each -> Deviation.of(lot, each)).toList(),
        judgement.findings().stream().flatMap(each -> MarginShare.of(each).stream()).toList(),
        delays(lot),
        instruments,
        readings);
  }

  /** From the last shipment, or from the day judged before any. */
  private Optional<Keeping> keeping(List<Lot> of) {
    Optional<LocalDate> shipped =
        of.stream()
            .flatMap(lot -> lot.all(What.DISPATCHED).stream())
            .map(each -> each.time().written().atZone(plan.establishment().zone()).toLocalDate())
            .max(Comparator.naturalOrder());
    LocalDate from = shipped.orElse(day);
    boolean known = shipped.isPresent();
    return plan.retention()
        .map(rule -> new Keeping(rule.until(from), from, known, rule.keep(), rule.rule()));
  }

  /** From the last entry before the review. */
  private static Optional<Quantity> reviewedAfter(Lot lot) {
    return lot.first(Step.RELEASE.into())
        .flatMap(
            review ->
                lot.entries().stream()
                    .filter(entry -> entry.time().isBefore(review.time()))
                    .reduce((earlier, later) -> later)
                    .map(last -> last.time().writtenTo(review.time())))
        .map(time -> new Quantity(Ratio.of(time.toSeconds(), 3600), Unit.HOUR));
  }

  private static LotAccount.Evidence evidence(
      Lot lot, List<ProbeReadings> readings, List<InstrumentState> instruments) {
    Set<Place> origins = new HashSet<>();
    List<ProbeReadings> logs =
        readings.stream().filter(each -> each.isLog() && origins.add(each.origin())).toList();
    List<ProbeReadings.Gap> gaps = logs.stream().flatMap(log -> log.gaps().stream()).toList();
    return new LotAccount.Evidence(
        lot.entries().size(),
        lot.corrections().size(),
        logs.size(),
        logs.stream().mapToLong(ProbeReadings::count).sum(),
        gaps.size(),
        gaps.stream().map(ProbeReadings.Gap::length).max(Comparator.naturalOrder()),
        instruments.stream().filter(each -> !each.inForce()).map(InstrumentState::id).toList());
  }

  private static LotAccount.Open open(Judgement judgement) {
    int doubts = judgement.openFaults().size();
    return new LotAccount.Open(
        judgement.deviations().size(),
        judgement.findings().stream().filter(f -> f.verdict() == Verdict.PENDING).count(),
        doubts,
        judgement.faults().size() - doubts);
  }

  /** Of the entries in force and of those that were replaced. */
  private List<LotAccount.Delay> delays(Lot lot) {
    return Stream.concat(
            lot.corrections().stream().map(Lot.Correction::replaced), lot.entries().stream())
        .flatMap(
            entry ->
                entry.entered().map(entry.time()::shortestTo).stream()
                    .filter(after -> after.compareTo(Duration.ZERO) > 0)
                    .map(after -> delay(entry, after)))
        .toList();
  }

  private LotAccount.Delay delay(Entry entry, Duration after) {
    boolean late = lateAfter.filter(most -> after.compareTo(most) > 0).isPresent();
    return new LotAccount.Delay(entry.place(), TimeAbove.minutes(after.toMillis()), late);
  }

  /** Of the instruments that its entries and logs name. */
  private List<InstrumentState> instruments(Lot lot) {
    Set<String> used =
        Stream.concat(
                lot.entries().stream().map(Entry::instrument),
                lot.tracks().stream().map(each -> each.track().instrument()))
            .collect(Collectors.toSet());
    return plan.instruments().stream()
        .filter(instrument -> used.contains(instrument.id()))
        .map(this::state)
        .toList();
  }

  private InstrumentState state(Instrument instrument) {
    return new InstrumentState(
        instrument.id(),
        instrument.kind(),
        instrument.tolerance(),
        register.last(instrument.id(), moment).map(Accounts::lastCheck),
        register.inForce(instrument, moment));
  }

  private static LotAccount.LastCheck lastCheck(Register.Check check) {
    Instant until = check.at().plus(Register.validity(check.instrument()));
    return new LotAccount.LastCheck(check.entry(), check.error(), check.passed(), until);
  }
}

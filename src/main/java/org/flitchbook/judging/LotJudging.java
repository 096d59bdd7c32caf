package org.flitchbook.judging;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.check.Checks;
import org.flitchbook.check.FormerJudgement;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.PlanChoice;
import org.flitchbook.doubt.Doubts;
import org.flitchbook.doubt.Rule;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Lots;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Succession;
import org.flitchbook.reading.Day;

/** Judges lots under the plan of today and under those in force while they were made. */
final class LotJudging {

  private static final String NEWER = "plan newer than the lot";

  private final Succession versions;
  private final List<Rule> rules;
  private final List<Day> days;
  private final Instant moment;
  private final Lots assembled;
  private final Map<String, Lots> underFormer = new HashMap<>();

  LotJudging(Succession versions, List<Rule> rules, List<Day> days, Instant moment) {
    this.versions = versions;
    this.rules = rules;
    this.days = days;
    this.moment = moment;
    this.assembled = Lots.assemble(versions.now(), days, moment);
  }

  /** The lots under the plan of today. */
  Lots assembled() {
    return assembled;
  }

  /** Of all lots of the book. */
  List<Judgement> judgements() {
    return assembled.lots().stream().map(this::judge).toList();
  }

  /**
   * Of the lots of a day: something of it was filed then, it is in a step, or a check re-opened it;
   * and a lot that nobody began on every day, since its rows may be those of another one.
   */
  List<Judgement> judgements(LocalDate day) {
    Register register = assembled.register();
    List<Lot> ofDay = assembled.ofDay(day);
    if (!register.hasFailed(day)) {
      return ofDay.stream().map(this::judge).toList();
    }
    Set<String> codes = ofDay.stream().map(Lot::code).collect(Collectors.toSet());
    return assembled.lots().stream()
        .filter(
            lot ->
                codes.contains(lot.code()) || Doubts.isReopened(versions.now(), register, lot, day))
        .map(this::judge)
        .toList();
  }

  private Judgement judge(Lot lot) {
    Instant begin = lot.entries().isEmpty() ? moment : lot.entries().get(0).time().earliest();
    List<Plan> former = versions.formerSince(begin);
    List<Fault> changed =
        Stream.of(
                newer(lot, begin).stream(),
                former.stream().map(plan -> changed(plan, lot)),
                emptyDays(lot).notes().stream(),
                corrected(lot))
            .flatMap(each -> each)
            .toList();
    Judgement now = judge(versions.now(), assembled, lot, changed);
    List<FormerJudgement> before =
        former.stream().flatMap(plan -> under(plan, lot, changed).stream()).toList();
    return PlanChoice.of(lot, versions)
        .map(
            choice ->
                before.stream()
                    .filter(each -> each.version().equals(choice.version()))
                    .findFirst()
                    .map(FormerJudgement::judgement)
                    .orElse(now))
        .orElseGet(() -> Checks.stricter(versions.now(), now, before));
  }

  private EmptyDays emptyDays(Lot lot) {
    return new EmptyDays(lot, versions.now().establishment().zone(), moment);
  }

  /** Of all lots of the book. */
  List<Fault> emptyDays() {
    return assembled.lots().stream().flatMap(lot -> emptyDays(lot).notes().stream()).toList();
  }

  private Stream<Fault> corrected(Lot lot) {
    boolean asked = rules.stream().anyMatch(rule -> rule.name().equals(FirstWritten.RULE));
    return asked && FirstWritten.isCorrected(lot)
        ? new FirstWritten(versions.now(), days, moment).passes(lot)
        : Stream.empty();
  }

  /** No plan was in force when the lot began: the limits may have been set to fit it. */
  private Optional<Fault> newer(Lot lot, Instant begin) {
    Plan first = versions.plans().get(0);
    LocalDate began = LocalDate.ofInstant(begin, first.establishment().zone());
    return began.isBefore(first.signed())
        ? Optional.of(
            Fault.ask(
                NEWER,
                lot.code(),
                first.place(),
                say(
                    "judging.plan.newer",
                    "version {0}, signed {1}, of a lot that began on {2}",
                    first.version(),
                    first.signed(),
                    began),
                say("judging.plan.then", "the version in force then, in the folder plans")))
        : Optional.empty();
  }

  private Fault changed(Plan plan, Lot lot) {
    return Fault.note(
        PlanChoice.CHANGED,
        lot.code(),
        plan.place(),
        say(
            "judging.plan.former",
            "version {0}, in force until {1}, when the lot was in work",
            plan.version(),
            versions.until(plan).orElseThrow()),
        say(
            "judging.plan.one-version",
            "one version over the whole lot; the stricter counts until an entry \"explained\" says"
                + " which"));
  }

  private Optional<FormerJudgement> under(Plan plan, Lot lot, List<Fault> changed) {
    Lots under =
        underFormer.computeIfAbsent(plan.version(), v -> Lots.assemble(plan, days, moment));
    LocalDate until = versions.until(plan).orElseThrow();
    return under
        .lot(lot.code())
        .map(same -> new FormerJudgement(plan.version(), until, judge(plan, under, same, changed)));
  }

  private Judgement judge(Plan plan, Lots under, Lot lot, List<Fault> more) {
    Doubts.Result examined = Doubts.examine(plan, rules, under.register(), lot, more, plan.words());
    return Judging.judge(plan, examined, moment);
  }
}

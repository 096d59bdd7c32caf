package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Judges a lot against every limit of its product's plan. Does no input or output. */
public final class Checks {

  private final JudgedLot judged;
  private final List<Fault> faults;
  private final Optional<JudgedLot> undoubted;

  private Checks(JudgedLot judged, List<Fault> faults) {
    this.judged = judged;
    this.faults = faults;
    this.undoubted = undoubted(judged, faults);
  }

  /** The same without the readings in doubt; empty where none are. */
  private static Optional<JudgedLot> undoubted(JudgedLot judged, List<Fault> faults) {
    List<Stretch> doubted =
        faults.stream()
            .filter(Fault::isInDoubt)
            .flatMap(fault -> fault.stretch().stream())
            .filter(stretch -> stretch.standing() == Stretch.Standing.IN_DOUBT)
            .toList();
    Lot lot = judged.lot();
    for (Stretch each : doubted) {
      lot = lot.without(each, "in doubt");
    }
    return doubted.isEmpty()
        ? Optional.empty()
        : Optional.of(new JudgedLot(judged.plan(), lot, judged.product(), judged.moment()));
  }

  /**
   * Judges one lot.
   *
   * @param lot without the readings that are none
   * @param doubts what the rules for dirty data say of it, beside its own faults
   * @param moment what has not happened by then is to come
   */
  public static Judgement judge(Plan plan, Lot lot, List<Fault> doubts, Instant moment) {
    List<Fault> faults = Stream.concat(lot.faults().stream(), doubts.stream()).toList();
    Optional<JudgedLot> judged =
        lot.product().map(product -> new JudgedLot(plan, lot, product, moment));
    List<Finding> findings =
        judged.map(each -> new Checks(each, faults).findings()).orElse(List.of());
    return Judgement.of(lot, findings, faults);
  }

  /**
   * The same lot under the plan of today and under those that were in force while it was made; of
   * each limit the stricter finding counts.
   *
   * @param plan of today
   */
  public static Judgement stricter(Plan plan, Judgement now, List<FormerJudgement> before) {
    Judgement judged = now;
    for (FormerJudgement former : before) {
      judged = former.orStricter(plan, judged);
    }
    return judged;
  }

  private List<Finding> findings() {
    Product product = judged.product();
    List<Finding> findings = new ArrayList<>();
    product.limits().forEach(limit -> findings.add(finding(limit, judge(limit))));
    SequenceJudge sequence = new SequenceJudge(judged);
    findings.add(finding(Implied.steps(judged.plan(), product), sequence.steps()));
    product
        .between()
        .map(most -> finding(Implied.between(judged.plan(), most), sequence.between(most)))
        .ifPresent(findings::add);
    for (Product.Exempt named : product.exemptions()) {
      findings.add(finding(Implied.exempt(named), exempt(named)));
    }
    for (Product.Missing missing : product.missing()) {
      findings.add(finding(Implied.covered(missing), notCovered(missing)));
    }
    Departure departure = new Departure(judged.lot(), findings, faults);
    if (judged.lot().first(What.DISPATCHED).isPresent() || departure.isEarly()) {
      findings.add(review(departure));
    }
    return findings;
  }

  private static Outcome notCovered(Product.Missing missing) {
    return Outcome.notShown(
        say(
            "check.class.missing",
            "the plan has no limit for {0}, which its product's class asks for",
            new Word("covers", missing.covers())));
  }

  /** Met by what the plan says, which is the reason; no reading shows it. */
  private static Outcome exempt(Product.Exempt named) {
    return Outcome.of(
        Verdict.MET,
        List.of(
            say(
                "check.class.exempt",
                "exempt by the plan: {0}; support: {1}",
                new Word("name", named.exemption().name()),
                named.support())));
  }

  /** A dispatch before the review, or of a lot that may not leave, is a deviation. */
  private Finding review(Departure departure) {
    Kind.Presence reviewed =
        new Kind.Presence(What.REVIEWED, Optional.of(What.DISPATCHED), List.of("by"));
    Outcome outcome = new PresenceJudge(judged, reviewed, Step.RELEASE).judge();
    return finding(Implied.review(reviewed), departure.of(outcome));
  }

  /** With the readings in doubt and without them; the worse counts. */
  private Outcome judge(Limit limit) {
    Outcome with = judge(limit, judged);
    return undoubted.map(without -> worse(with, judge(limit, without))).orElse(with);
  }

  private static Outcome worse(Outcome with, Outcome without) {
    Outcome worse = Outcome.worstOfAll(List.of(with, without));
    return worse.verdict() == with.verdict()
        ? worse
        : worse.but(
            worse.verdict(),
            say("check.without-doubted", "as judged without the readings in doubt"));
  }

  private static Outcome judge(Limit limit, JudgedLot judged) {
    Kind kind = limit.kind();
    Step step = limit.step();
    if (kind instanceof Kind.Bound bound) {
      return new BoundJudge(judged, bound, step).judge();
    }
    if (kind instanceof Kind.Span span) {
      return new SpanJudge(judged, span, step).judge();
    }
    if (kind instanceof Kind.TimeAtTemperature table) {
      return new TimeAtTemperatureJudge(judged, table).judge();
    }
    if (kind instanceof Kind.Holding holding) {
      return new HoldingJudge(judged, holding, step).judge();
    }
    if (kind instanceof Kind.Length length) {
      return new LengthJudge(judged, length, step).judge();
    }
    if (kind instanceof Kind.Cadence cadence) {
      return new CadenceJudge(judged, cadence, step).judge();
    }
    if (kind instanceof Kind.Share share) {
      return new ShareJudge(judged, share).judge();
    }
    if (kind instanceof Kind.Presence presence) {
      return new PresenceJudge(judged, presence, step).judge();
    }
    throw new AssertionError("nobody judges " + kind);
  }

  private Finding finding(Limit limit, Outcome found) {
    Outcome outcome = unlessInDoubt(unlessLacking(limit, found));
    return new Finding(
        limit,
        outcome.verdict(),
        outcome.measured(),
        outcome.formulas(),
        outcome.reasons(),
        new Remarks(judged, this::judge).on(limit, outcome),
        outcome.evidence(),
        outcome.parts(),
        outcome.rows());
  }

  /** A limit of which something else is not shown can be missed, but not met. */
  private Outcome unlessLacking(Limit limit, Outcome outcome) {
    return Optional.of(outcome)
        .filter(each -> each.verdict() == Verdict.MET)
        .flatMap(each -> unproved(limit).or(() -> unconfirmed(limit)).or(() -> lackingParts(limit)))
        .map(why -> outcome.but(Verdict.NOT_SHOWN, why))
        .orElse(outcome);
  }

  private Outcome unlessInDoubt(Outcome outcome) {
    return faults.stream()
        .filter(fault -> fault.isInDoubt() && !outcome.verdict().isMissed())
        .filter(outcome::isTouchedBy)
        .findFirst()
        .map(fault -> outcome.but(Verdict.NOT_SHOWN, doubt(fault)))
        .orElse(outcome);
  }

  private static Message doubt(Fault fault) {
    Word rule = new Word("rule", fault.rule());
    return fault.isOpen()
        ? say("check.in-doubt", "it rests on a reading in doubt ({0} at {1})", rule, fault.place())
        : say(
            "check.in-doubt.explained",
            "it rests on a reading in doubt ({0} at {1}), explained without independent evidence",
            rule,
            fault.place());
  }

  private Optional<Message> unproved(Limit limit) {
    return Optional.of(judged.unproved(limit.when()))
        .filter(facts -> !facts.isEmpty())
        .map(Listing::and)
        .map(
            facts ->
                say(
                    "check.proof.lacking",
                    "it holds only with {0}, which the lot does not show",
                    facts));
  }

  /** A stricter remembered limit that nobody has confirmed or set aside. */
  private static Optional<Message> unconfirmed(Limit limit) {
    return limit
        .doubt()
        .map(
            stricter ->
                say(
                    "check.stricter-remembered",
                    "a stricter limit is remembered ({0}); the plan confirms neither",
                    stricter));
  }

  /** Parts in which the source prints the limit and which the plan leaves out. */
  private Optional<Message> lackingParts(Limit limit) {
    List<String> chosen = judged.product().limits().stream().map(Limit::id).toList();
    List<String> lacking =
        judged.plan().ruleSets().stream()
            .flatMap(set -> set.limits().keySet().stream())
            .filter(id -> id.startsWith(limit.id() + ".") && !chosen.contains(id))
            .toList();
    Message why =
        say(
            "check.parts-lacking",
            "it holds only with {0}, which the plan lacks",
            Listing.commas(lacking));
    return lacking.isEmpty() ? Optional.empty() : Optional.of(why);
  }

  /** Findings as an inspector reads them: by step, and within it by rank. */
  public static List<Finding> inOrder(List<Finding> findings) {
    return findings.stream()
        .sorted(
            Comparator.comparing((Finding finding) -> finding.limit().step())
                .thenComparing(finding -> finding.limit().rank()))
        .toList();
  }
}

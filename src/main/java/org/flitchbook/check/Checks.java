package org.flitchbook.check;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Product;
import org.flitchbook.plan.Rank;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** Judges a lot against every limit of its product's plan. Does no input or output. */
public final class Checks {

  private final Case judged;
  private final List<Fault> faults;

  private Checks(Case judged, List<Fault> faults) {
    this.judged = judged;
    this.faults = faults;
  }

  /**
   * Judges one lot.
   *
   * @param doubts what the rules for dirty data say of it, beside its own faults
   * @param moment what has not happened by then is to come
   */
  public static Judgement judge(Plan plan, Lot lot, List<Fault> doubts, Instant moment) {
    List<Fault> faults = Stream.concat(lot.faults().stream(), doubts.stream()).toList();
    List<Finding> findings =
        lot.product()
            .map(product -> new Checks(new Case(plan, lot, product, moment), faults).findings())
            .orElse(List.of());
    return new Judgement(lot, verdict(findings, faults), findings, faults);
  }

  /**
   * The same lot under the plan of today and under those that were in force while it was made; of
   * each limit the stricter finding counts.
   *
   * @param plan of today
   */
  public static Judgement stricter(Plan plan, Judgement now, List<Former> before) {
    Judgement judged = now;
    for (Former former : before) {
      List<Finding> findings = new Versions(plan, judged).stricter(former);
      List<Fault> faults =
          Stream.concat(judged.faults().stream(), former.judgement().faults().stream())
              .distinct()
              .toList();
      judged = new Judgement(judged.lot(), verdict(findings, faults), findings, faults);
    }
    return judged;
  }

  private List<Finding> findings() {
    Product product = judged.product();
    List<Finding> findings = new ArrayList<>();
    for (Limit limit : product.limits()) {
      findings.add(finding(limit, judge(limit)));
    }
    findings.add(finding(Implied.steps(judged.plan(), product), new Sequence(judged).steps()));
    product
        .between()
        .ifPresent(
            longest ->
                findings.add(
                    finding(
                        Implied.between(judged.plan(), product, longest),
                        new Sequence(judged).between(longest))));
    if (judged.lot().first(What.DISPATCHED).isPresent()) {
      findings.add(review());
    }
    for (Product.Exempt named : product.exemptions()) {
      findings.add(finding(Implied.exempt(judged.plan(), named), exempt(named)));
    }
    for (Product.Missing missing : product.missing()) {
      findings.add(
          finding(
              Implied.covered(judged.plan(), missing),
              Outcome.notShown(
                  judged.say(
                      "check.class.missing",
                      judged.plan().words().word("covers", missing.covers())))));
    }
    return findings;
  }

  /** Met by what the plan says, which is told with what it rests on; no reading shows it. */
  private Outcome exempt(Product.Exempt named) {
    return Outcome.of(
        Verdict.MET,
        judged.say(
            "check.class.exempt",
            judged.plan().words().name(named.exemption().name()),
            named.support()));
  }

  /** A dispatch before the review is a deviation whatever the plan lists. */
  private Finding review() {
    Kind.Presence reviewed =
        new Kind.Presence(What.REVIEWED, Optional.of(What.DISPATCHED), List.of("by"));
    return finding(
        Implied.review(judged.plan(), reviewed),
        new PresenceJudge(judged, reviewed, Step.RELEASE).judge());
  }

  private Outcome judge(Limit limit) {
    Kind kind = limit.kind();
    if (kind instanceof Kind.Bound bound) {
      return new BoundJudge(judged, bound, limit.step()).judge();
    }
    if (kind instanceof Kind.Span span) {
      return new SpanJudge(judged, span, limit.step()).judge();
    }
    if (kind instanceof Kind.TimeAtTemperature table) {
      return new TimeAtTemperatureJudge(judged, table).judge();
    }
    if (kind instanceof Kind.Holding holding) {
      return new HoldingJudge(judged, holding, limit.step()).judge();
    }
    if (kind instanceof Kind.Length length) {
      return new LengthJudge(judged, length, limit.step()).judge();
    }
    if (kind instanceof Kind.Cadence cadence) {
      return new CadenceJudge(judged, cadence, limit.step()).judge();
    }
    if (kind instanceof Kind.Share share) {
      return new ShareJudge(judged, share).judge();
    }
    if (kind instanceof Kind.Presence presence) {
      return new PresenceJudge(judged, presence, limit.step()).judge();
    }
    throw new AssertionError("nobody judges " + kind);
  }

  private Finding finding(Limit limit, Outcome found) {
    Outcome outcome = whole(limit, undoubted(limit, new Proof(judged).of(limit, found)));
    for (Fault fault : faults) {
      if (fault.isOpen() && touches(fault, outcome) && !outcome.verdict().isMissed()) {
        outcome =
            outcome.but(
                Verdict.NOT_SHOWN,
                judged.say(
                    "check.in-doubt",
                    judged.plan().words().word("rule", fault.rule()),
                    fault.place()));
      }
    }
    return new Finding(
        limit,
        outcome.verdict(),
        outcome.measured(),
        outcome.formula(),
        outcome.reason(),
        new Remarks(judged, this::judge).on(limit, outcome),
        outcome.evidence(),
        outcome.parts());
  }

  /** A stricter remembered limit that nobody has confirmed or set aside leaves it unshown. */
  private Outcome undoubted(Limit limit, Outcome outcome) {
    return limit.doubt().isPresent() && outcome.verdict() == Verdict.MET
        ? outcome.but(
            Verdict.NOT_SHOWN, judged.say("check.stricter-remembered", limit.doubt().get()))
        : outcome;
  }

  /**
   * A limit that its source prints in parts shows nothing where the plan leaves one of them out.
   */
  private Outcome whole(Limit limit, Outcome outcome) {
    List<String> chosen = judged.product().limits().stream().map(Limit::id).toList();
    List<String> lacking =
        judged.plan().ruleSets().stream()
            .flatMap(set -> set.limits().keySet().stream())
            .filter(id -> id.startsWith(limit.id() + ".") && !chosen.contains(id))
            .toList();
    return lacking.isEmpty() || outcome.verdict() != Verdict.MET
        ? outcome
        : outcome.but(
            Verdict.NOT_SHOWN, judged.say("check.parts-lacking", String.join(", ", lacking)));
  }

  private static boolean touches(Fault fault, Outcome outcome) {
    return outcome.rests().stream().anyMatch(rest -> touches(fault.place(), rest));
  }

  /**
   * An entry is touched by a fault of its line; a log's column by one of its column or its file.
   */
  private static boolean touches(Place fault, Place rest) {
    if (!rest.file().equals(fault.file())) {
      return false;
    }
    boolean wholeColumn = rest.line() == 0 || fault.line() == 0;
    return wholeColumn
        ? fault.column().isEmpty() || rest.column().equals(fault.column())
        : rest.line() == fault.line();
  }

  private static Verdict verdict(List<Finding> findings, List<Fault> faults) {
    Groups groups = new Groups(findings);
    Verdict worst =
        Verdict.worst(
            findings.stream()
                .filter(finding -> finding.limit().rank() == Rank.CRITICAL)
                .map(groups::counted)
                .toList());
    boolean open = faults.stream().anyMatch(Fault::isOpen);
    return open && !worst.isMissed() ? Verdict.NOT_SHOWN : worst;
  }

  /** Findings as an inspector reads them: by step, and within it by rank. */
  public static List<Finding> inOrder(List<Finding> findings) {
    return findings.stream()
        .sorted(
            Comparator.comparing((Finding finding) -> finding.limit().step())
                .thenComparing(finding -> finding.limit().rank()))
        .toList();
  }

  static String idOf(String covers) {
    return covers.toLowerCase(Locale.ROOT).replace(' ', '-');
  }
}

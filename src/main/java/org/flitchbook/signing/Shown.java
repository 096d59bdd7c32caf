package org.flitchbook.signing;

import static org.flitchbook.message.Message.count;
import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.account.LotAccount;
import org.flitchbook.account.Review;
import org.flitchbook.check.Judgement;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Fault;
import org.flitchbook.job.UsageException;
import org.flitchbook.judging.Judged;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Product;
import org.flitchbook.record.DayJudged;

/**
 * What a record says, judged again from what it carries: what somebody is shown before they sign.
 *
 * @param lots that it is about
 * @param review what a review of them rests on
 */
record Shown(EnclosedEvidence enclosed, DayJudged day, List<Judgement> lots, Review review) {

  /**
   * What the record says.
   *
   * @param tool this version of the program
   * @throws UsageException where what it carries can't be judged
   */
  static Shown of(EnclosedEvidence.Taken taken, String tool) {
    EnclosedEvidence enclosed = taken.enclosed().orElseThrow(() -> unjudged(taken.faults()));
    Judged again = enclosed.judgedAgain(tool);
    DayJudged day = again.day().orElseThrow(() -> unjudged(again.faults()));
    List<String> codes = enclosed.lots();
    List<Judgement> lots =
        day.judgements().stream().filter(each -> codes.contains(each.lot().code())).toList();
    return new Shown(enclosed, day, lots, Review.of(lots, day.accounts()));
  }

  private static UsageException unjudged(List<Fault> faults) {
    return new UsageException(
        "signing.unjudged",
        "what the record carries can't be judged: {0}",
        Listing.semicolons(faults.stream().map(Fault::message).toList()));
  }

  /** Whether it is the record of one lot, whose review is the one before shipment. */
  boolean isOfOneLot() {
    return enclosed.lots().equals(List.of(enclosed.name()));
  }

  /** Lot by lot its verdict and what is open, and whose entries they have. */
  List<Message> lines() {
    List<Message> lines = new ArrayList<>();
    for (Judgement lot : lots) {
      lines.add(say("signing.shown.lot", "    {0}: {1}", named(lot), verdict(lot)));
      lines.add(say("signing.shown.open", "        open: {0}", open(lot)));
    }
    if (lots.isEmpty()) {
      lines.add(say("signing.shown.no-lot", "    no lot"));
    }
    lines.add(say("signing.shown.entries", "    entries initialled: {0}", review.list()));
    return lines;
  }

  private static Argument named(Judgement judgement) {
    String code = judgement.lot().code();
    Optional<String> product = judgement.lot().product().map(Product::name);
    return product.isEmpty() ? Message.of(code) : Listing.commas(List.of(code, product.get()));
  }

  /** An earlier version may have found something else, and that is what is printed. */
  private Argument verdict(Judgement judgement) {
    String printed = enclosed.verdict(judgement.lot().code());
    return printed.equals(judgement.verdict().words())
        ? judgement.verdict()
        : say(
            "signing.shown.otherwise",
            "{0}, where the record says \"{1}\"",
            judgement.verdict(),
            printed);
  }

  private Argument open(Judgement judgement) {
    List<Object> open = new ArrayList<>();
    judgement
        .deviations()
        .forEach(
            each ->
                open.add(
                    say("signing.shown.missed", "{0} {1}", each.limit().name(), each.verdict())));
    LotAccount.Open counted = day.accounts().lot(judgement).open();
    if (counted.pending() > 0) {
      open.add(
          count(
              "signing.shown.pending",
              counted.pending(),
              "{0} limit pending",
              "{0} limits pending"));
    }
    if (counted.doubts() > 0) {
      open.add(
          count(
              "signing.shown.doubts",
              counted.doubts(),
              "{0} doubt to be explained",
              "{0} doubts to be explained"));
    }
    return open.isEmpty() ? say("signing.shown.nothing", "nothing") : Listing.semicolons(open);
  }
}

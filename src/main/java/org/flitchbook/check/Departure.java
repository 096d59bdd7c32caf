package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Rank;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * Whether a lot that left was free to leave: not held, and either without an open critical limit
 * and an open question, or with its deviation closed before (9 CFR 417.3 and 417.5(c)).
 *
 * @param others what was found on all other limits
 */
record Departure(Lot lot, List<Finding> others, List<Fault> faults) {

  /** Whether a reason says what left. */
  static boolean isAbout(Message reason) {
    return reason.id().equals("check.review.left");
  }

  /** Not met for one that was not, beside what the review shows. */
  Outcome of(Outcome review) {
    Outcome outcome = review;
    for (Entry left : lot.entries()) {
      List<Message> reasons = reasons(left);
      if (!reasons.isEmpty()) {
        outcome =
            outcome
                .but(
                    Verdict.NOT_MET,
                    say(
                        "check.review.left",
                        "LEFT: {0} ({1}) while {2}",
                        to(left),
                        left.place(),
                        Listing.semicolons(reasons)))
                .from(Stream.concat(outcome.evidence().stream(), Stream.of(left.place())).toList());
      }
    }
    return outcome;
  }

  private static Message to(Entry left) {
    return left.item().isEmpty()
        ? Message.of(left.shown())
        : say("check.review.left-to", "{0} to {1}", left.shown(), left.item());
  }

  /** Whether it was packed while it was held or before its last step ended. */
  boolean isEarly() {
    return lot.all(What.PACKED).stream().anyMatch(packed -> !reasons(packed).isEmpty());
  }

  /** Packing is no leaving: what is open then may be settled before the review. */
  private List<Message> reasons(Entry left) {
    if (!left.is(What.PACKED) && !left.is(What.DISPATCHED)) {
      return List.of();
    }
    List<Message> reasons = unfinished(left);
    if (left.is(What.DISPATCHED)) {
      reviewedTooEarly(left).ifPresent(reasons::add);
      reasons.addAll(open(left));
    }
    return reasons;
  }

  /** A review is of the whole record: one before the last step ended saw none of it. */
  private Optional<Message> reviewedTooEarly(Entry left) {
    Optional<Entry> ended =
        lot.stays().stream()
            .flatMap(stay -> stay.out().stream())
            .filter(out -> !left.time().isBefore(out.time()))
            .max(Comparator.comparing(out -> out.time().earliest()));
    return last(What.REVIEWED, left)
        .filter(review -> ended.filter(out -> review.time().isBefore(out.time())).isPresent())
        .map(
            review ->
                say(
                    "check.review.before-end",
                    "it was reviewed ({0}) before {1}",
                    review.place(),
                    ended.orElseThrow().what()));
  }

  private List<Message> unfinished(Entry left) {
    List<Message> reasons = new ArrayList<>();
    Optional<Entry> closed = last(What.CLOSED, left);
    last(What.HELD, left)
        .filter(hold -> closed.filter(end -> !end.time().isBefore(hold.time())).isEmpty())
        .map(hold -> say("check.review.held", "it is held ({0})", hold.place()))
        .ifPresent(reasons::add);
    lot.stays().stream()
        .flatMap(stay -> Stream.concat(Stream.of(stay.into()), stay.out().stream()))
        .filter(entry -> left.time().isBefore(entry.time()))
        .limit(1)
        .map(
            later ->
                say("check.review.in-work", "{0} came after it ({1})", later.what(), later.place()))
        .forEach(reasons::add);
    lot.stays().stream()
        .filter(stay -> lot.isRunning(stay.step()))
        .map(stay -> say("check.review.running", "it is in the step {0}", stay.step()))
        .forEach(reasons::add);
    return reasons;
  }

  private List<Message> open(Entry left) {
    List<Message> reasons = new ArrayList<>();
    if (last(What.CLOSED, left).isEmpty()) {
      others.stream().filter(Departure::isOpen).map(Departure::open).forEach(reasons::add);
      faults.stream()
          .filter(fault -> fault.isOpen() && !isLater(fault, left))
          .map(
              fault ->
                  say(
                      "check.review.asked",
                      "{0} is open ({1})",
                      new Word("rule", fault.rule()),
                      fault.place()))
          .forEach(reasons::add);
    }
    return reasons;
  }

  /** Whether it is about an entry of a time when the lot had left. */
  private boolean isLater(Fault fault, Entry left) {
    return lot.entries().stream()
        .filter(entry -> entry.place().isSameLine(fault.place()))
        .anyMatch(entry -> left.time().isBefore(entry.time()));
  }

  /** The last entry about something before it left. */
  private Optional<Entry> last(What what, Entry left) {
    return lot.all(what).stream()
        .filter(entry -> !left.time().isBefore(entry.time()))
        .reduce((earlier, later) -> later);
  }

  /** A limit that a plan sets for the release itself may be open while the lot is kept for sale. */
  private static boolean isOpen(Finding finding) {
    boolean ofRelease =
        finding.limit().step() == Step.RELEASE
            && !(finding.limit().kind() instanceof Kind.Sequence);
    return finding.limit().rank() == Rank.CRITICAL
        && (finding.verdict().isMissed() || (finding.verdict() == Verdict.PENDING && !ofRelease));
  }

  private static Message open(Finding finding) {
    return say("check.review.open", "{0} is {1}", finding.limit().name(), finding.verdict());
  }
}

package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.flitchbook.account.LotAccount;
import org.flitchbook.account.Review;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Block.Signatures.Box;
import org.flitchbook.plan.Establishment;
import org.flitchbook.plan.Person;
import org.flitchbook.sheet.What;

/** The boxes of each record, with sentences that are true of it and of anyone who signs. */
final class SigningBoxes extends Section {

  private static final String SECOND = "-2";

  private final List<Judgement> lots;
  private final Review review;
  private final Establishment house;

  SigningBoxes(DayJudged day, List<Judgement> lots) {
    super(day);
    this.lots = lots;
    this.review = Review.of(lots, day.accounts());
    this.house = day.plan().establishment();
  }

  /** On page one of the record of a lot: its maker, and the review before shipment. */
  static Signatures ofLot(DayJudged day, Judgement judgement) {
    SigningBoxes boxes = new SigningBoxes(day, List.of(judgement));
    return new Signatures(List.of(boxes.prepared(judgement), boxes.review(judgement).first()));
  }

  /** Further on in it: the second review, where each reviewer has entries. */
  static Optional<Signatures> secondOfLot(DayJudged day, Judgement judgement) {
    return new SigningBoxes(day, List.of(judgement)).review(judgement).second();
  }

  private Box prepared(Judgement judgement) {
    String maker =
        judgement
            .lot()
            .first(What.CURING_SALT)
            .flatMap(entry -> day.plan().person(entry.by()))
            .map(Person::name)
            .orElse("");
    return new Box(
        "prepared",
        say("record.page-one.prepared-by", "Prepared by"),
        maker,
        say(
            "record.page-one.prepared",
            "Entries by initials: {0}. Those under my initials are mine and were made at the time.",
            review.list()));
  }

  private Reviewing review(Judgement judgement) {
    boolean isReleasing = review.standing() != Review.Standing.NOT_RELEASED;
    String role =
        isReleasing
            ? say("record.page-one.review", "Pre-shipment review")
            : say("record.page-one.review-only", "Reviewed, not released");
    String alone = say("record.page-one.review-alone", "{0}, sole operator", role);
    return new Reviewing(
        isReleasing ? "reviewed" : Records.NOT_RELEASED,
        house.soleOperator() ? alone : role,
        house.soleOperator()
            ? statement(judgement) + " " + alone(account(judgement))
            : statement(judgement));
  }

  private String statement(Judgement judgement) {
    return switch (review.standing()) {
      case LIMITS_MET -> say("record.page-one.complete", "Complete; every critical limit is met.");
      case ACTION_ON_FILE ->
          say(
              "record.page-one.action",
              "Complete; corrective action and the disposition of every gram are on file.");
      case NOT_RELEASED ->
          say("record.page-one.not-released", "Read. Not released: {0}.", open(judgement));
    };
  }

  /** A review in one box, or in two where each reviewer has entries: nobody reviews their own. */
  private final class Reviewing {
    private final boolean isByTwo = review.isByTwo(day.plan());
    private final String field;
    private final String role;
    private final String statement;

    Reviewing(String field, String role, String statement) {
      this.field = field;
      this.role = role;
      this.statement = statement;
    }

    Box first() {
      String others = say("record.sign.others", "{0} Reviewed: what others wrote.", statement);
      return box(field, role, isByTwo ? others : statement);
    }

    Optional<Signatures> second() {
      Box box =
          box(
              field + SECOND,
              say("record.sign.second", "{0}, by a second reviewer", role),
              say(
                  "record.sign.of-first",
                  "{0} Reviewed: what the first reviewer wrote.",
                  statement));
      return isByTwo ? Optional.of(new Signatures(List.of(box))) : Optional.empty();
    }
  }

  private String open(Judgement judgement) {
    LotAccount.Open open = account(judgement).open();
    List<String> parts = new ArrayList<>();
    if (open.deviations() > 0) {
      parts.add(
          count(
              "record.sign.deviations",
              open.deviations(),
              "{0} deviation without all that closes it",
              "{0} deviations without all that closes them"));
    }
    if (open.pending() > 0) {
      parts.add(
          count("record.day.pending", open.pending(), "{0} limit pending", "{0} limits pending"));
    }
    if (open.doubts() > 0) {
      parts.add(toExplain(open.doubts()));
    }
    return parts.isEmpty() ? say(judgement.verdict()) : String.join("; ", parts);
  }

  /** Who reviews what he made himself says how long after. */
  private String alone(LotAccount account) {
    if (account.reviewedAfter().isEmpty()) {
      return say(
          "record.page-one.alone", "I work alone, and have let time pass before this review.");
    }
    return count(
        "record.page-one.alone-after",
        account.reviewedAfter().get().value().floor().longValueExact(),
        "I work alone; the review came {0} hour after the last entry before it.",
        "I work alone; the review came {0} hours after the last entry before it.");
  }

  /** Under the lots of the day's sheet. */
  static Signatures ofDay(DayJudged day) {
    SigningBoxes boxes = new SigningBoxes(day, day.judgements());
    return new Signatures(List.of(boxes.dayClosed(), boxes.dayReview().first()));
  }

  /** At its end: the second review, where each reviewer has entries. */
  static Optional<Signatures> secondOfDay(DayJudged day) {
    return new SigningBoxes(day, day.judgements()).dayReview().second();
  }

  private Box dayClosed() {
    return box(
        "closed",
        say("record.day.closed-by", "Day closed by"),
        say(
            "record.day.closed",
            "All sheets and logs are in. Entries by initials: {0}.",
            review.list()));
  }

  private Reviewing dayReview() {
    return new Reviewing(
        "reviewed",
        say("record.day.reviewed-by", "Reviewed by"),
        say("record.day.reviewed", "The records were read."));
  }

  /** Of the report of the day's deviations. */
  static Signatures ofReport(DayJudged day) {
    SigningBoxes boxes = new SigningBoxes(day, day.held());
    return new Signatures(List.of(boxes.raised(), boxes.decided(), boxes.closed()));
  }

  private Box raised() {
    String held =
        lots.isEmpty() ? noneHeld() : say("record.report.raised", "The lots named are held.");
    return box("raised", say("record.report.raised-by", "Raised by"), held);
  }

  private String noneHeld() {
    return say("record.report.none-held", "No lot is held by this report.");
  }

  private Box decided() {
    String open = codes(lots.stream().filter(each -> !Review.isDisposed(account(each))).toList());
    String decided =
        open.isEmpty()
            ? say("record.report.decided", "Disposition of every gram is on file.")
            : say("record.report.undecided", "Disposition is not all on file: {0}.", open);
    return box(
        "decided",
        say("record.report.decided-by", "Decided by"),
        lots.isEmpty() ? noneHeld() : decided);
  }

  private Box closed() {
    String open =
        codes(lots.stream().filter(each -> !Review.isClosed(each.lot(), account(each))).toList());
    String by =
        open.isEmpty()
            ? say("record.report.closed-by", "Verified and closed by")
            : say("record.report.read-by", "Read, not closed, by");
    String closed =
        open.isEmpty()
            ? say("record.report.closed", "All four parts are done.")
            : say("record.report.not-closed", "Parts are not on file: {0}.", open);
    return box("closed", by, lots.isEmpty() ? noneHeld() : closed);
  }

  private LotAccount account(Judgement judgement) {
    return day.accounts().lot(judgement);
  }

  private static String codes(List<Judgement> some) {
    return some.stream().map(each -> each.lot().code()).collect(Collectors.joining(", "));
  }
}

package org.flitchbook.signing;

import static org.flitchbook.message.Message.say;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.account.Review;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Establishment;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.plan.Plan;
import org.flitchbook.record.Records;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.sign.CertificateInfo;

/**
 * Who signs a record as what, and in which of its boxes.
 *
 * @param reason what the person adds; empty where nothing
 */
record Signatory(Plan plan, Person person, SignerRole role, String box, String reason) {

  /**
   * The person of a request.
   *
   * @throws UsageException where the plan doesn't let the person sign so, or no box is open
   */
  static Signatory of(RecordSigning.Request request, Plan plan, PdfSignatures look) {
    Person person = PlannedBook.person(plan, request.initials());
    SignerRole role =
        request.role().map(word -> asked(word, person)).orElseGet(() -> open(person, look));
    return new Signatory(plan, person, role, box(role, look), request.reason().orElse("").strip());
  }

  private static SignerRole asked(String word, Person person) {
    SignerRole role = SignerRole.named(word);
    if (!person.is(word)) {
      throw new UsageException(
          "signing.not-in-role",
          "the plan does not have {0} as a {1}",
          person.initials(),
          role.message());
    }
    return role;
  }

  private static SignerRole open(Person person, PdfSignatures look) {
    return Stream.of(SignerRole.values())
        .filter(each -> person.is(each.word()) && each.box(look).isPresent())
        .findFirst()
        .orElseThrow(
            () ->
                new UsageException(
                    "signing.no-box", "no box of this record is open to {0}", person.initials()));
  }

  private static String box(SignerRole role, PdfSignatures look) {
    if (role == SignerRole.REVIEWER && SignerRole.MAKER.box(look).isPresent()) {
      throw new UsageException(
          "signing.maker-first", "the maker signs first, and the reviewer after");
    }
    return role.box(look)
        .orElseThrow(
            () ->
                new UsageException(
                    "signing.all-signed", "every box for a {0} is signed already", role.message()));
  }

  /**
   * Nobody signs that a lot may go where it may not, and nobody alone reviews what they wrote down
   * themselves, unless the plan says that they work alone.
   *
   * @param check of the signatures that are there already
   * @throws UsageException where it would be so
   */
  void refuse(Shown shown, SignatureCheck check, PdfSignatures look) {
    if (role == SignerRole.MAKER) {
      return;
    }
    refuseUntrue(shown);
    Establishment house = plan.establishment();
    long own = shown.review().by(person.initials());
    boolean isWithAnother = house.isReviewedByTwo() && hasAnother(check, look);
    if (own > 0 && !house.soleOperator() && !isWithAnother) {
      refuseOwn(shown, own);
    }
  }

  /** A print of an earlier version may have no other box than the one that is not true. */
  private void refuseUntrue(Shown shown) {
    boolean isReleasing = shown.isOfOneLot() && !box.startsWith(Records.NOT_RELEASED);
    if (isReleasing && shown.review().standing() == Review.Standing.NOT_RELEASED) {
      throw new UsageException(
          "signing.untrue",
          "the box states that limits are met, or that action and disposition are on file, and"
              + " neither is so; close the day again, and the record has the box \"Reviewed, not"
              + " released\"");
    }
  }

  /** Whether another reviewer has signed, or must still sign, in another box. */
  private boolean hasAnother(SignatureCheck check, PdfSignatures look) {
    return look.fields().stream()
        .skip(1)
        .filter(field -> !field.equals(box))
        .anyMatch(field -> look.signature(field).isEmpty() || isAnothers(field, check));
  }

  private boolean isAnothers(String field, SignatureCheck check) {
    return check.signatures().stream()
        .filter(each -> each.signed().field().equals(field))
        .map(SignatureCheck.Each::fingerprint)
        .anyMatch(
            print ->
                person.key(print).isEmpty()
                    && plan.people().stream().anyMatch(other -> other.key(print).isPresent()));
  }

  private void refuseOwn(Shown shown, long own) {
    Message instead =
        plan.establishment().isReviewedByTwo()
            ? say(
                "signing.own.two",
                "a reviewer who has none signs, or, where each reviewer of the plan has entries,"
                    + " two of them: a record that is closed then has a box for each")
            : say("signing.own.another", "the plan asks for a reviewer who has none");
    throw new UsageException(
        "signing.own",
        "{0} has entries in lot {1} and can't review them alone ({2} of them); {3}",
        person.initials(),
        Listing.commas(shown.lots().stream().map(each -> each.lot().code()).toList()),
        own,
        instead);
  }

  /**
   * The plan has the key as the person's, and it counts at that time.
   *
   * @throws UsageException where it is not so
   */
  void refuseUnknown(CertificateInfo info, ZonedDateTime time) {
    Optional<PersonKey> known = person.key(info.fingerprint());
    if (known.isEmpty()) {
      throw new UsageException(
          "signing.unknown-key",
          "the plan does not have the key {0} as {1}'s; key show lists the line to add",
          info.fingerprint(),
          person.initials());
    }
    if (!known.get().isInForce(time.toLocalDate()) || !info.isInForce(time.toInstant())) {
      throw new UsageException(
          "signing.not-in-force", "the key of {0} does not count today", person.initials());
    }
  }

  /** What the person is shown before signing. */
  List<Message> lines(String file, Shown shown) {
    List<Message> lines = new ArrayList<>();
    lines.add(say("signing.shown.record", "{0} says:", file));
    lines.addAll(shown.lines());
    lines.add(
        say(
            "signing.shown.as",
            "{0} signs as {1}, in the box \"{2}\".",
            person.name(),
            role.message(),
            box));
    return lines;
  }
}

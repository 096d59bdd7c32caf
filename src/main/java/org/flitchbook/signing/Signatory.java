package org.flitchbook.signing;

import static org.flitchbook.message.Message.say;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.check.Judgement;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Fault;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.judging.Judged;
import org.flitchbook.ledger.Head;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.plan.Plan;
import org.flitchbook.record.DayJudged;
import org.flitchbook.seal.PdfFile.SignatureRequest;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.sheet.What;
import org.flitchbook.sign.CertificateInfo;

/**
 * Who signs a record as what, and in which of its boxes.
 *
 * @param reason what the person adds; empty where nothing
 */
record Signatory(
    Plan plan, Person person, SignerRole role, String box, String reason, ZonedDateTime time) {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss xxx", Locale.ROOT);

  /**
   * The person of a request.
   *
   * @throws UsageException where the plan doesn't let the person sign so, or no box is open
   */
  static Signatory of(
      Session session, RecordSigning.Request request, Plan plan, PdfSignatures look) {
    Person person = PlannedBook.person(plan, request.initials());
    SignerRole role =
        request.role().map(word -> asked(word, person)).orElseGet(() -> open(person, look));
    return new Signatory(
        plan,
        person,
        role,
        box(role, look),
        request.reason().orElse("").strip(),
        session.now().atZone(plan.establishment().zone()).truncatedTo(ChronoUnit.SECONDS));
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
   * Nobody reviews what they wrote down themselves, unless the plan says that they work alone.
   *
   * @param taken what the record carries
   * @param tool this version of the program
   * @throws UsageException where it would be so, or where the record doesn't show it
   */
  void check(EnclosedEvidence.Taken taken, String tool) {
    if (role == SignerRole.MAKER || plan.establishment().soleOperator()) {
      return;
    }
    EnclosedEvidence enclosed = taken.enclosed().orElseThrow(() -> unjudged(taken.faults()));
    Judged again = enclosed.judgedAgain(tool);
    DayJudged day = again.day().orElseThrow(() -> unjudged(again.faults()));
    List<String> lots = enclosed.lots();
    day.judgements().stream()
        .filter(each -> lots.contains(each.lot().code()) && hasWritten(each))
        .findFirst()
        .ifPresent(this::refuseOwn);
  }

  private static UsageException unjudged(List<Fault> faults) {
    return new UsageException(
        "signing.unjudged",
        "what the record carries can't be judged: {0}",
        Listing.semicolons(faults.stream().map(Fault::message).toList()));
  }

  /** The review itself is the reviewer's to write. */
  private boolean hasWritten(Judgement judgement) {
    return judgement.lot().entries().stream()
        .anyMatch(entry -> entry.by().equals(person.initials()) && !entry.is(What.REVIEWED));
  }

  private void refuseOwn(Judgement judgement) {
    throw new UsageException(
        "signing.own",
        "{0} has entries in lot {1} and can't review them; another reviewer signs, or the plan"
            + " says \"soleOperator\": true",
        person.initials(),
        judgement.lot().code());
  }

  /**
   * The plan has the key as the person's, and it counts today.
   *
   * @throws UsageException where it is not so
   */
  void refuseUnknown(CertificateInfo info) {
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

  SignatureRequest autograph(CertificateInfo key, Optional<Head> head, int room) {
    String why = role.word() + (reason.isEmpty() ? "" : ": " + reason);
    return new SignatureRequest(
        box,
        lines(key, head).stream().map(line -> line.in(plan.words())).toList(),
        plan.words(),
        person.name(),
        SignatureCheck.stated(why, head),
        time,
        role == SignerRole.MAKER,
        room);
  }

  private List<Message> lines(CertificateInfo key, Optional<Head> head) {
    String name = person.name();
    String initials = person.initials();
    List<Message> lines = new ArrayList<>();
    lines.add(say("signing.box.by", "Signed: {0} ({1}), {2}", name, initials, role.message()));
    lines.add(Message.of(TIME.format(time) + " (" + time.getZone() + ")"));
    String print = shortened(key.fingerprint());
    lines.add(
        head.map(
                end ->
                    say(
                        "signing.box.key-and-ledger",
                        "Key {0}; ledger {1}, {2}",
                        print,
                        end.sequence(),
                        end.shortHash()))
            .orElse(say("signing.box.key", "Key {0}", print)));
    if (role == SignerRole.REVIEWER && plan.establishment().soleOperator()) {
      lines.add(
          say(
              "signing.box.alone",
              "Sole operator: maker and reviewer are one person, as the plan says."));
    }
    if (!reason.isEmpty()) {
      lines.add(Message.of(reason));
    }
    return lines;
  }

  /** The first 16 digits in groups of four, to be read out. */
  private static String shortened(String fingerprint) {
    return fingerprint.substring(0, 16).replaceAll("(.{4})(?=.)", "$1 ");
  }
}

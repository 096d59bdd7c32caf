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
import org.flitchbook.archive.SignerRole;
import org.flitchbook.archive.SigningReason;
import org.flitchbook.book.PlanVersions;
import org.flitchbook.check.Judgement;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Fault;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.judging.Judged;
import org.flitchbook.ledger.Head;
import org.flitchbook.pdf.Autograph;
import org.flitchbook.pdf.Look;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.record.DayJudged;
import org.flitchbook.sheet.What;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.words.Words;

/** Who signs a record as what, and in which of its boxes. */
final class Signatory {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss xxx", Locale.ROOT);

  private final Plan plan;
  private final Person person;
  private final SignerRole role;
  private final String box;
  private final String reason;
  private final ZonedDateTime time;

  /**
   * @throws UsageException where the plan doesn't let the person sign so, or no box is open
   */
  Signatory(Plan plan, SignRequest request, Look look, Session session) {
    this.plan = plan;
    this.person = PlanVersions.person(plan, request.initials());
    this.role = role(request.role(), look);
    this.box = box(look);
    this.reason = request.reason().orElse("").strip();
    this.time = session.now().atZone(plan.establishment().zone()).truncatedTo(ChronoUnit.SECONDS);
  }

  private SignerRole role(Optional<String> asked, Look look) {
    Stream<SignerRole> roles = Stream.of(SignerRole.values());
    if (asked.isPresent()) {
      SignerRole role =
          roles.filter(each -> each.word().equals(asked.get())).findFirst().orElseThrow();
      if (!person.is(role.word())) {
        throw new UsageException(
            "the plan does not have " + person.initials() + " as a " + role.word());
      }
      return role;
    }
    return roles
        .filter(each -> person.is(each.word()) && each.box(look).isPresent())
        .findFirst()
        .orElseThrow(
            () -> new UsageException("no box of this record is open to " + person.initials()));
  }

  private String box(Look look) {
    if (role == SignerRole.REVIEWER && SignerRole.MAKER.box(look).isPresent()) {
      throw new UsageException("the maker signs first, and the reviewer after");
    }
    return role.box(look)
        .orElseThrow(
            () -> new UsageException("every box for a " + role.word() + " is signed already"));
  }

  Person person() {
    return person;
  }

  Plan plan() {
    return plan;
  }

  ZonedDateTime time() {
    return time;
  }

  SignerRole role() {
    return role;
  }

  String box() {
    return box;
  }

  String reason() {
    return reason;
  }

  /**
   * Nobody reviews what they wrote down themselves, unless the plan says that they work alone.
   *
   * @throws UsageException where it would be so, or where the record doesn't tell
   */
  void check(String file, byte[] pdf) {
    if (role == SignerRole.MAKER || plan.establishment().soleOperator()) {
      return;
    }
    EnclosedEvidence.Taken taken = EnclosedEvidence.of(file, pdf);
    Judged again =
        taken
            .enclosed()
            .map(EnclosedEvidence::judgedAgain)
            .orElseThrow(() -> unjudged(taken.faults()));
    DayJudged day = again.day().orElseThrow(() -> unjudged(again.faults()));
    List<String> lots = taken.enclosed().orElseThrow().lots();
    day.judgements().stream()
        .filter(each -> lots.contains(each.lot().code()) && hasWritten(each))
        .findFirst()
        .ifPresent(this::refuseOwn);
  }

  private static UsageException unjudged(List<Fault> faults) {
    return new UsageException("what the record carries can't be judged: " + faults);
  }

  /** The review itself is the reviewer's to write. */
  private boolean hasWritten(Judgement judgement) {
    return judgement.lot().entries().stream()
        .anyMatch(entry -> entry.by().equals(person.initials()) && !entry.is(What.REVIEWED));
  }

  private void refuseOwn(Judgement judgement) {
    throw new UsageException(
        person.initials()
            + " has entries in lot "
            + judgement.lot().code()
            + " and can't review them; another reviewer signs, or the plan says"
            + " \"soleOperator\": true");
  }

  Autograph autograph(CertificateInfo card, Optional<Head> head, int room) {
    return new Autograph(
        box,
        lines(card, head),
        plan.words(),
        person.name(),
        new SigningReason(role.word() + (reason.isEmpty() ? "" : ": " + reason), head).stated(),
        time,
        role == SignerRole.MAKER,
        room);
  }

  private List<String> lines(CertificateInfo card, Optional<Head> head) {
    Words words = plan.words();
    List<String> lines = new ArrayList<>();
    String as =
        (role == SignerRole.MAKER
                ? say("desk.signed.maker", "maker")
                : say("desk.signed.reviewer", "reviewer"))
            .in(words);
    lines.add(
        words.say(
            "desk.signed.by", "Signed: {0} ({1}), {2}", person.name(), person.initials(), as));
    lines.add(TIME.format(time) + " (" + time.getZone() + ")");
    String key = words.say("desk.signed.key", "Key {0}", shortened(card.fingerprint()));
    lines.add(
        head.map(
                end ->
                    key
                        + "; "
                        + words.say(
                            "desk.signed.ledger",
                            "ledger {0}, {1}",
                            end.sequence(),
                            end.shortHash()))
            .orElse(key));
    if (role == SignerRole.REVIEWER && plan.establishment().soleOperator()) {
      lines.add(
          words.say(
              "desk.signed.alone",
              "Sole operator: maker and reviewer are one person, as the plan says."));
    }
    if (!reason.isEmpty()) {
      lines.add(reason);
    }
    return lines;
  }

  /** The first 16 digits in groups of four, to be read out. */
  static String shortened(String fingerprint) {
    return fingerprint.substring(0, 16).replaceAll("(.{4})(?=.)", "$1 ");
  }
}

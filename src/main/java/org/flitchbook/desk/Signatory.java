package org.flitchbook.desk;

import static org.flitchbook.message.Message.say;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.Fault;
import org.flitchbook.ledger.Head;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.record.DayJudged;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.seal.SignatureRequest;
import org.flitchbook.sheet.What;
import org.flitchbook.sign.Card;
import org.flitchbook.words.Words;

/** Who signs a record as what, and in which of its boxes. */
final class Signatory {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss xxx", Locale.ROOT);

  private final Plan plan;
  private final Person person;
  private final Role role;
  private final String box;
  private final String reason;
  private final ZonedDateTime time;

  /**
   * @throws Misuse where the plan doesn't let the person sign so, or no box is open
   */
  Signatory(Plan plan, SignOrder order, PdfSignatures look, Caller caller) {
    this.plan = plan;
    this.person = Keys.person(plan, order.initials());
    this.role = role(order.role(), look);
    this.box = box(look);
    this.reason = order.reason().orElse("").strip();
    this.time = caller.now().atZone(plan.establishment().zone()).truncatedTo(ChronoUnit.SECONDS);
  }

  private Role role(Optional<String> asked, PdfSignatures look) {
    Stream<Role> roles = Stream.of(Role.values());
    if (asked.isPresent()) {
      Role role = roles.filter(each -> each.word().equals(asked.get())).findFirst().orElseThrow();
      if (!person.is(role.word())) {
        throw new Misuse("the plan does not have " + person.initials() + " as a " + role.word());
      }
      return role;
    }
    return roles
        .filter(each -> person.is(each.word()) && each.box(look).isPresent())
        .findFirst()
        .orElseThrow(() -> new Misuse("no box of this record is open to " + person.initials()));
  }

  private String box(PdfSignatures look) {
    if (role == Role.REVIEWER && Role.MAKER.box(look).isPresent()) {
      throw new Misuse("the maker signs first, and the reviewer after");
    }
    return role.box(look)
        .orElseThrow(() -> new Misuse("every box for a " + role.word() + " is signed already"));
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

  Role role() {
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
   * @throws Misuse where it would be so, or where the record doesn't tell
   */
  void check(String file, byte[] pdf) {
    if (role == Role.MAKER || plan.establishment().soleOperator()) {
      return;
    }
    Enclosed.Taken taken = Enclosed.of(file, pdf);
    List<Fault> faults = new ArrayList<>(taken.faults());
    DayJudged again =
        taken
            .enclosed()
            .flatMap(enclosed -> enclosed.judgedAgain(faults))
            .orElseThrow(() -> new Misuse("what the record carries can't be judged: " + faults));
    List<String> lots = taken.enclosed().orElseThrow().lots();
    again.judgements().stream()
        .filter(each -> lots.contains(each.lot().code()) && hasWritten(each))
        .findFirst()
        .ifPresent(this::refuseOwn);
  }

  /** The review itself is the reviewer's to write. */
  private boolean hasWritten(Judgement judgement) {
    return judgement.lot().entries().stream()
        .anyMatch(entry -> entry.by().equals(person.initials()) && !entry.is(What.REVIEWED));
  }

  private void refuseOwn(Judgement judgement) {
    throw new Misuse(
        person.initials()
            + " has entries in lot "
            + judgement.lot().code()
            + " and can't review them; another reviewer signs, or the plan says"
            + " \"soleOperator\": true");
  }

  SignatureRequest autograph(Card card, Optional<Head> head, int room) {
    return new SignatureRequest(
        box,
        lines(card, head),
        plan.words(),
        person.name(),
        StatedHead.in(role.word() + (reason.isEmpty() ? "" : ": " + reason), head),
        time,
        role == Role.MAKER,
        room);
  }

  private List<String> lines(Card card, Optional<Head> head) {
    Words words = plan.words();
    List<String> lines = new ArrayList<>();
    String as =
        (role == Role.MAKER
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
    if (role == Role.REVIEWER && plan.establishment().soleOperator()) {
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

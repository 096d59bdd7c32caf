package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.PlanRead;
import org.flitchbook.plan.Plans;
import org.flitchbook.sign.Algorithm;
import org.flitchbook.sign.Card;
import org.flitchbook.sign.Holder;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/** Makes, shows and retires the key of one person. */
final class Keys {

  private static final String ENTRY = "\"key\": \"%s\"";

  private final Book book;
  private final Plan plan;
  private final Person person;
  private final KeyRing ring;
  private final Caller caller;

  private Keys(Book book, Plan plan, KeyOrder order, Caller caller) {
    this.book = book;
    this.plan = plan;
    this.person = person(plan, order.initials());
    this.ring = new KeyRing(order.keys(), order.initials());
    this.caller = caller;
  }

  /** A job with the key of somebody whom the plan of the book knows. */
  interface Job {
    Answer done(Keys keys);
  }

  /**
   * Does a job; faults of the plan are told and nothing is done.
   *
   * @throws Misuse where the plan knows nobody of these initials
   */
  static Answer of(KeyOrder order, Caller caller, Job job) {
    List<Fault> faults = new ArrayList<>();
    Book book = Shelf.withoutDays(Shelf.bookOf(order.book()), faults);
    Judging judging = new Judging(book, faults);
    Optional<Plan> plan = judging.plan();
    return plan.filter(known -> judging.faults().isEmpty())
        .map(known -> job.done(new Keys(book, known, order, caller)))
        .orElseGet(() -> Answer.broken(judging.faults()));
  }

  /**
   * @throws Misuse where the plan knows nobody of these initials
   */
  static Person person(Plan plan, String initials) {
    List<String> known = plan.people().stream().map(Person::initials).toList();
    return plan.person(initials)
        .orElseThrow(
            () ->
                new Misuse(
                    "\""
                        + initials
                        + "\" is nobody in the plan; it has "
                        + String.join(", ", known)));
  }

  Answer make(Algorithm algorithm, boolean enter, Passphrase passphrase) {
    List<PersonKey> known = person.keysInForce(today());
    if (!known.isEmpty()) {
      throw new Misuse(
          person.initials()
              + " has a key in the plan, "
              + known.get(0).fingerprint()
              + "; retire it before a new one is made");
    }
    ring.refuseInside(book.folder());
    ring.refuseSecond();
    Holder holder = new Holder(person.initials(), person.name(), plan.establishment().name());
    SigningKey key = Signing.newKey(holder, algorithm, caller.now());
    ring.put(key, closed(key, passphrase));
    return told("A key of " + named() + " was made.\n" + told(key.card()) + entered(key, enter));
  }

  private byte[] closed(SigningKey key, Passphrase passphrase) {
    char[] word = passphrase.of(person.initials(), true);
    try {
      Optional<String> refusal = Signing.refusal(word);
      if (refusal.isPresent()) {
        throw new Misuse(refusal.get());
      }
      return Signing.close(key, word);
    } finally {
      Arrays.fill(word, '\0');
    }
  }

  private String entered(SigningKey key, boolean enter) {
    String print = key.card().fingerprint();
    if (!enter) {
      return "Add this to " + person.initials() + " in " + planFile() + ":\n    " + entry(print);
    }
    write(Plans.enterKey(book.plan(), person.initials(), print));
    return "It was entered in " + planFile() + "; every other byte there is as it was.\n";
  }

  private static String entry(String fingerprint) {
    return ENTRY.formatted(fingerprint) + "\n";
  }

  private Path planFile() {
    return book.folder().resolve(Shelf.PLAN);
  }

  /** Nothing is written that could not be read again as a plan. */
  private void write(byte[] text) {
    PlanRead read =
        Plans.read(SourceFile.of(Shelf.PLAN, text), book.templates(), book.ownTemplates());
    if (!read.faults().isEmpty()) {
      throw new IllegalStateException("the plan with the key in it: " + read.faults());
    }
    try {
      Disk.replace(planFile(), text);
    } catch (IOException unwritable) {
      throw new Misuse("can't write " + planFile() + ": " + Reason.of(unwritable), unwritable);
    }
  }

  private String named() {
    return person.name() + " (" + person.initials() + ")";
  }

  private String told(Card card) {
    return "    key          "
        + ring.key()
        + "\n"
        + "    certificate  "
        + ring.certificate()
        + ", to hand out\n"
        + "    fingerprint  "
        + card.fingerprint()
        + " (SHA-256)\n"
        + "    kind         "
        + card.algorithm()
        + "\n"
        + "    holds        "
        + day(card.from())
        + " to "
        + day(card.until())
        + "\n";
  }

  private LocalDate day(Instant moment) {
    return moment.atZone(plan.establishment().zone()).toLocalDate();
  }

  private LocalDate today() {
    return day(caller.now());
  }

  private static Answer told(String text) {
    return new Answer(Status.WELL, text, "", List.of(), List.of());
  }

  Answer show() {
    Card card =
        ring.card()
            .orElseThrow(
                () ->
                    new Misuse(
                        "there is no certificate " + ring.certificate() + "; key new makes one"));
    return told("The key of " + named() + ":\n" + told(card) + standing(card));
  }

  private String standing(Card card) {
    Optional<PersonKey> known = person.key(card.fingerprint());
    if (known.isEmpty()) {
      return "The plan doesn't know it. Add this to "
          + person.initials()
          + " in "
          + planFile()
          + ":\n    "
          + entry(card.fingerprint());
    }
    return known
        .flatMap(PersonKey::until)
        .map(day -> "The plan knows it, as retired: it counts until " + day + ".\n")
        .orElse("The plan knows it.\n");
  }

  Answer retire(Optional<String> on) {
    LocalDate until = on.map(Keys::date).orElseGet(this::today);
    PersonKey key =
        person.keys().stream()
            .filter(each -> each.from().isEmpty() && each.until().isEmpty())
            .findFirst()
            .orElseThrow(() -> new Misuse(person.initials() + " has no key in use in the plan"));
    write(Plans.retireKey(book.plan(), person.initials(), key.fingerprint(), until));
    return told(
        "The key "
            + key.fingerprint()
            + " of "
            + named()
            + " is retired in "
            + planFile()
            + ".\nSignatures made with it up to "
            + until
            + " stay good; later ones don't count.\n"
            + ring.putAside(key.fingerprint())
                .map(aside -> "Its file is now " + aside + ".\n")
                .orElse(""));
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException noDate) {
      throw new Misuse("--on \"" + text + "\" is no date such as 2026-02-24", noDate);
    }
  }
}

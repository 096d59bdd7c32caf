package org.flitchbook.keys;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlanVersions;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.PersonKey;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.PlanRead;
import org.flitchbook.plan.Plans;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.KeyAlgorithm;
import org.flitchbook.sign.KeyHolder;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/** Makes, shows and retires the key of one person. */
public final class Keys {

  private static final String ENTRY = "\"key\": \"%s\"";

  private final Book book;
  private final Plan plan;
  private final Person person;
  private final KeyFolder folder;
  private final Session session;

  private Keys(Session session, KeyRequest request, Book book, Plan plan) {
    this.session = session;
    this.book = book;
    this.plan = plan;
    this.person = PlanVersions.person(plan, request.initials());
    this.folder = new KeyFolder(request.keys(), request.initials());
  }

  /**
   * Makes a key for a person of the plan.
   *
   * @param rsa an RSA key in place of one on an elliptic curve
   * @param enter enter it in the plan's file
   * @throws UsageException where the plan doesn't know the person, or there is a key already
   */
  public static JobResult make(
      Session session, KeyRequest request, boolean rsa, boolean enter, Passphrase passphrase) {
    KeyAlgorithm algorithm = rsa ? KeyAlgorithm.RSA_3072 : KeyAlgorithm.EC_P256;
    return with(session, request, keys -> keys.make(algorithm, enter, passphrase));
  }

  /**
   * Shows a person's key, without its secret.
   *
   * @throws UsageException where there is none
   */
  public static JobResult show(Session session, KeyRequest request) {
    return with(session, request, Keys::show);
  }

  /**
   * Marks a person's key as retired in the plan's file.
   *
   * @param on the last day on which it counts; empty: today
   * @throws UsageException where the plan has no key of that person in use
   */
  public static JobResult retire(Session session, KeyRequest request, Optional<String> on) {
    return with(session, request, keys -> keys.retire(on));
  }

  private static JobResult with(
      Session session, KeyRequest request, Function<Keys, JobResult> job) {
    Book book = BookFolder.withoutDays(request.book());
    PlanVersions versions = PlanVersions.of(book);
    return versions
        .now()
        .map(plan -> job.apply(new Keys(session, request, book, plan)))
        .orElseGet(() -> JobResult.broken(versions.faults()));
  }

  private JobResult make(KeyAlgorithm algorithm, boolean enter, Passphrase passphrase) {
    List<PersonKey> known = person.keysInForce(today());
    if (!known.isEmpty()) {
      throw new UsageException(
          person.initials()
              + " has a key in the plan, "
              + known.get(0).fingerprint()
              + "; retire it before a new one is made");
    }
    folder.refuseInside(book.folder());
    folder.refuseSecond();
    KeyHolder holder = new KeyHolder(person.initials(), person.name(), plan.establishment().name());
    SigningKey key = Signing.newKey(holder, algorithm, session.now());
    folder.put(key, closed(key, passphrase));
    return JobResult.well(
        "A key of " + named() + " was made.\n" + told(key.card()) + entered(key, enter));
  }

  private byte[] closed(SigningKey key, Passphrase passphrase) {
    char[] word = passphrase.of(person.initials(), true);
    try {
      Optional<String> refusal = Signing.refusal(word);
      if (refusal.isPresent()) {
        throw new UsageException(refusal.get());
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
    return book.folder().resolve(BookFolder.PLAN);
  }

  /** Nothing is written that could not be read again as a plan. */
  private void write(byte[] text) {
    PlanRead read =
        Plans.read(SourceFile.of(BookFolder.PLAN, text), book.templates(), book.ownTemplates());
    if (!read.faults().isEmpty()) {
      throw new IllegalStateException("the plan with the key in it: " + read.faults());
    }
    Disk.writing(planFile(), () -> Disk.replace(planFile(), text));
  }

  private String named() {
    return person.name() + " (" + person.initials() + ")";
  }

  private String told(CertificateInfo card) {
    return "    key          "
        + folder.key()
        + "\n"
        + "    certificate  "
        + folder.certificate()
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
    return day(session.now());
  }

  private JobResult show() {
    CertificateInfo card =
        folder
            .info()
            .orElseThrow(
                () ->
                    new UsageException(
                        "there is no certificate " + folder.certificate() + "; key new makes one"));
    return JobResult.well("The key of " + named() + ":\n" + told(card) + standing(card));
  }

  private String standing(CertificateInfo card) {
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

  private JobResult retire(Optional<String> on) {
    LocalDate until = on.map(Keys::date).orElseGet(this::today);
    PersonKey key =
        person.keys().stream()
            .filter(each -> each.from().isEmpty() && each.until().isEmpty())
            .findFirst()
            .orElseThrow(
                () -> new UsageException(person.initials() + " has no key in use in the plan"));
    write(Plans.retireKey(book.plan(), person.initials(), key.fingerprint(), until));
    return JobResult.well(
        "The key "
            + key.fingerprint()
            + " of "
            + named()
            + " is retired in "
            + planFile()
            + ".\nSignatures made with it up to "
            + until
            + " stay good; later ones don't count.\n"
            + folder
                .putAside(key.fingerprint())
                .map(aside -> "Its file is now " + aside + ".\n")
                .orElse(""));
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException noDate) {
      throw new UsageException("--on \"" + text + "\" is no date such as 2026-02-24", noDate);
    }
  }
}

package org.flitchbook.keys;

import static org.flitchbook.message.Message.say;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.PlanRead;
import org.flitchbook.plan.Plans;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.Signing.KeyAlgorithm;
import org.flitchbook.sign.Signing.KeyHolder;
import org.flitchbook.sign.SigningKey;

/** Makes, shows and retires the key of one person. */
public final class Keys {

  private final Book book;
  private final Plan plan;
  private final Person person;
  private final KeyFolder folder;
  private final Session session;

  /**
   * Whose key is meant.
   *
   * @param book whose plan names the person
   * @param initials of the person
   * @param keys the folder of the keys, outside of the book
   */
  public record Request(Path book, String initials, Path keys) {}

  /** Gives the passphrase of a person's key. It is wiped after use. */
  @FunctionalInterface
  public interface Passphrase {

    /**
     * The passphrase.
     *
     * @param session of the job that wants it
     * @param initials whose key it is for
     * @param isNew whether it closes a new key, so that a person must write it twice
     */
    char[] of(Session session, String initials, boolean isNew);
  }

  private Keys(Session session, Request request, Book book, Plan plan) {
    this.session = session;
    this.book = book;
    this.plan = plan;
    this.person = PlannedBook.person(plan, request.initials());
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
      Session session, Request request, boolean rsa, boolean enter, Passphrase passphrase) {
    KeyAlgorithm algorithm = rsa ? KeyAlgorithm.RSA_3072 : KeyAlgorithm.EC_P256;
    return with(session, request, keys -> keys.make(algorithm, enter, passphrase));
  }

  /**
   * Shows a person's key, without its secret.
   *
   * @throws UsageException where there is none
   */
  public static JobResult show(Session session, Request request) {
    return with(session, request, Keys::show);
  }

  /**
   * Marks a person's key as retired in the plan's file.
   *
   * @param on the last day on which it counts; empty: today
   * @throws UsageException where the plan has no key of that person in use
   */
  public static JobResult retire(Session session, Request request, Optional<String> on) {
    return with(session, request, keys -> keys.retire(on));
  }

  private static JobResult with(
      Session session, Request request, Function<Keys, List<Message>> job) {
    PlannedBook book = BookFolder.readPlan(session, request.book());
    return book.plan()
        .map(plan -> job.apply(new Keys(session, request, book.book(), plan)))
        .map(lines -> JobResult.well(session.lines(lines)))
        .orElseGet(() -> JobResult.broken(book.faults()));
  }

  private List<Message> make(KeyAlgorithm algorithm, boolean enter, Passphrase passphrase) {
    person.keysInForce(today()).stream().findFirst().ifPresent(this::refuseSecond);
    folder.refuseInside(book.folder());
    folder.refuseSecond();
    KeyHolder holder = new KeyHolder(initials(), person.name(), plan.establishment().name());
    SigningKey key = Signing.newKey(holder, algorithm, session.now());
    folder.put(key, closed(key, passphrase));
    Message made = say("keys.made", "A key of {0} ({1}) was made.", person.name(), initials());
    Message add = say("keys.add", "Add this to {0} in {1}:", initials(), planFile());
    return details(
        made, key.info(), enter ? List.of(entered(key)) : List.of(add, entry(key.info())));
  }

  private String initials() {
    return person.initials();
  }

  private void refuseSecond(PersonKey known) {
    throw new UsageException(
        "keys.second",
        "{0} has a key in the plan, {1}; retire it before a new one is made",
        initials(),
        known.fingerprint());
  }

  private byte[] closed(SigningKey key, Passphrase passphrase) {
    char[] word = passphrase.of(session, initials(), true);
    try {
      Optional<Message> refusal = Signing.refusal(word);
      if (refusal.isPresent()) {
        throw new UsageException(List.of(refusal.get()));
      }
      return Signing.close(key, word);
    } finally {
      Arrays.fill(word, '\0');
    }
  }

  private Message entered(SigningKey key) {
    write(Plans.enterKey(book.plan(), initials(), key.info().fingerprint()));
    return say(
        "keys.entered", "It was entered in {0}; every other byte there is as it was.", planFile());
  }

  private static Message entry(CertificateInfo info) {
    return Message.of("    \"key\": \"" + info.fingerprint() + "\"");
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

  private List<Message> details(Message first, CertificateInfo info, List<Message> last) {
    List<Message> lines = new ArrayList<>();
    lines.add(first);
    lines.add(say("keys.key", "    key          {0}", folder.key()));
    lines.add(say("keys.certificate", "    certificate  {0}, to hand out", folder.certificate()));
    lines.add(say("keys.fingerprint", "    fingerprint  {0} (SHA-256)", info.fingerprint()));
    lines.add(say("keys.kind", "    kind         {0}", info.algorithm()));
    lines.add(
        say("keys.holds", "    holds        {0} to {1}", day(info.from()), day(info.until())));
    lines.addAll(last);
    return lines;
  }

  private LocalDate day(Instant moment) {
    return moment.atZone(plan.establishment().zone()).toLocalDate();
  }

  private LocalDate today() {
    return day(session.now());
  }

  private List<Message> show() {
    CertificateInfo info =
        folder
            .info()
            .orElseThrow(
                () ->
                    new UsageException(
                        "keys.no-certificate",
                        "there is no certificate {0}; key new makes one",
                        folder.certificate()));
    Message shown = say("keys.shown", "The key of {0} ({1}):", person.name(), initials());
    Message unknown =
        say(
            "keys.unknown",
            "The plan doesn't know it. Add this to {0} in {1}:",
            initials(),
            planFile());
    return details(
        shown,
        info,
        person
            .key(info.fingerprint())
            .map(known -> List.of(standing(known)))
            .orElse(List.of(unknown, entry(info))));
  }

  private static Message standing(PersonKey known) {
    return known
        .until()
        .map(
            day ->
                say(
                    "keys.known-as-retired",
                    "The plan knows it, as retired: it counts until {0}.",
                    day))
        .orElse(say("keys.known", "The plan knows it."));
  }

  private List<Message> retire(Optional<String> on) {
    LocalDate until = on.map(Keys::date).orElseGet(this::today);
    PersonKey key =
        person.keys().stream()
            .filter(each -> each.from().isEmpty() && each.until().isEmpty())
            .findFirst()
            .orElseThrow(
                () ->
                    new UsageException(
                        "keys.none-in-use", "{0} has no key in use in the plan", initials()));
    write(Plans.retireKey(book.plan(), initials(), key.fingerprint(), until));
    List<Message> lines = new ArrayList<>();
    lines.add(
        say(
            "keys.retired",
            "The key {0} of {1} ({2}) is retired in {3}.",
            key.fingerprint(),
            person.name(),
            initials(),
            planFile()));
    lines.add(
        say(
            "keys.retired-until",
            "Signatures made with it up to {0} stay good; later ones don't count.",
            until));
    folder
        .putAside(key.fingerprint())
        .ifPresent(aside -> lines.add(say("keys.aside", "Its file is now {0}.", aside)));
    return lines;
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException noDate) {
      throw new UsageException(
          noDate, "keys.no-date", "--on \"{0}\" is no date such as 2026-02-24", text);
    }
  }
}

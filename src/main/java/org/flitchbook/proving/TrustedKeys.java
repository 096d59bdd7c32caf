package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.flitchbook.book.BookFolder;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.UsageException;
import org.flitchbook.json.Binder;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.plan.Plans;
import org.flitchbook.sign.CertificateInfo;

/**
 * The keys that signatures are held against. The plan that a record carries is none of them: a
 * forger of a record forges that too.
 *
 * @param people of a plan; none where no plan counts
 * @param plan what to call that plan
 * @param fingerprints that were named
 */
record TrustedKeys(List<Person> people, String plan, List<String> fingerprints) {

  /**
   * The keys that a request names.
   *
   * @param book that the record lies in, whose plan counts where none is named
   * @param faults what is wrong with the people of that plan is added
   * @throws UsageException where the plan that is named can't be read
   */
  static TrustedKeys of(ProveRequest request, Optional<Path> book, List<Fault> faults) {
    return request
        .plan()
        .or(() -> book)
        .map(TrustedKeys::file)
        .map(plan -> new TrustedKeys(people(plan, faults), plan.toString(), request.fingerprints()))
        .orElseGet(() -> new TrustedKeys(List.of(), "", request.fingerprints()));
  }

  private static Path file(Path plan) {
    return Files.isDirectory(plan) ? plan.resolve(BookFolder.PLAN) : plan;
  }

  private static List<Person> people(Path plan, List<Fault> faults) {
    Binder.Bound<List<Person>> people =
        Plans.people(SourceFile.of(plan.toString(), Disk.read(plan)));
    faults.addAll(people.faults());
    return people.value().orElse(List.of());
  }

  /** Whether a valid signature is by somebody known. */
  Statement confirm(
      String about, String box, CertificateInfo signer, Optional<OffsetDateTime> time) {
    String print = signer.fingerprint();
    Optional<Person> holder =
        people.stream().filter(person -> person.key(print).isPresent()).findFirst();
    if (holder.isPresent()) {
      return confirm(about, box, holder.get(), print, time.map(OffsetDateTime::toLocalDate));
    }
    if (fingerprints.contains(print)) {
      return Statement.proved(
          about, say("proving.key.named", "It was made with the key that you named, {0}.", print));
    }
    if (people.isEmpty() && fingerprints.isEmpty()) {
      return Statement.open(
          about,
          say(
              "proving.key.unconfirmed",
              "The signer is not confirmed: the key {0}, whose certificate says \"{1}\", is"
                  + " anybody's until its fingerprint is compared. Give --fingerprint or --plan.",
              print,
              signer.name()));
    }
    return Statement.broken(
        about,
        say(
            "proving.key.unknown",
            "The signature in \"{0}\" was made with a key that is not known: the key {1}, whose"
                + " certificate says \"{2}\".",
            box,
            print,
            signer.name()));
  }

  private Statement confirm(
      String about, String box, Person holder, String print, Optional<LocalDate> day) {
    PersonKey key = holder.key(print).orElseThrow();
    return day.filter(key::isInForce).isPresent()
        ? Statement.proved(
            about,
            say(
                "proving.key.known",
                "It was made with the key that {0} has as {1}'s, {2}.",
                plan,
                holder.initials(),
                holder.name()))
        : Statement.broken(about, outOfForce(box, holder, key));
  }

  private Message outOfForce(String box, Person holder, PersonKey key) {
    Message message =
        say(
            "proving.key.not-in-force",
            "The signature in \"{0}\" was made with a key that {1} has as {2}'s, {3}, on a day on"
                + " which it did not count.",
            box,
            plan,
            holder.initials(),
            holder.name());
    return key.until()
        .map(
            last ->
                say(
                    "proving.key.retired",
                    "The signature in \"{0}\" was made with a key that {1} has as {2}'s, {3}, on a"
                        + " day on which it did not count: it is retired since {4}.",
                    box,
                    plan,
                    holder.initials(),
                    holder.name(),
                    last))
        .orElse(message);
  }
}

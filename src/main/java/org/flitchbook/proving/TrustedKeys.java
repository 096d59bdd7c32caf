package org.flitchbook.proving;

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
import org.flitchbook.plan.Person;
import org.flitchbook.plan.PersonKey;
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
   * @param book that the record lies in, whose plan counts where none is named
   * @param faults what is wrong with the people of that plan is added
   * @throws UsageException where the plan that is named can't be read
   */
  static TrustedKeys of(ProveRequest request, Optional<Path> book, List<Fault> faults) {
    Optional<Path> file =
        request.plan().map(TrustedKeys::file).or(() -> book.map(TrustedKeys::file));
    return file.map(
            plan -> new TrustedKeys(people(plan, faults), plan.toString(), request.fingerprints()))
        .orElseGet(() -> new TrustedKeys(List.of(), "", request.fingerprints()));
  }

  private static Path file(Path plan) {
    return Files.isDirectory(plan) ? plan.resolve(BookFolder.PLAN) : plan;
  }

  private static List<Person> people(Path plan, List<Fault> faults) {
    return Plans.people(SourceFile.of(plan.toString(), Disk.read(plan)), faults);
  }

  boolean isNobody() {
    return people.isEmpty() && fingerprints.isEmpty();
  }

  /** Whether a valid signature is by somebody known. */
  Statement confirm(String about, String box, CertificateInfo card, Optional<OffsetDateTime> time) {
    String print = card.fingerprint();
    Optional<Person> holder =
        people.stream().filter(person -> person.key(print).isPresent()).findFirst();
    if (holder.isPresent()) {
      return confirm(about, box, holder.get(), print, time.map(OffsetDateTime::toLocalDate));
    }
    if (fingerprints.contains(print)) {
      return Statement.proved(about, "It was made with the key that you named, " + print + ".");
    }
    String key = "the key " + print + ", whose certificate says \"" + card.name() + "\"";
    return isNobody()
        ? Statement.open(
            about,
            "The signer is not confirmed: "
                + key
                + ", is anybody's until its fingerprint is compared. Give --fingerprint or --plan.")
        : Statement.broken(
            about,
            "The signature in \"" + box + "\" was made with a key that is not known: " + key + ".");
  }

  private Statement confirm(
      String about, String box, Person holder, String print, Optional<LocalDate> day) {
    PersonKey key = holder.key(print).orElseThrow();
    String whose = plan + " has as " + holder.initials() + "'s, " + holder.name();
    return day.filter(key::isInForce).isPresent()
        ? Statement.proved(about, "It was made with the key that " + whose + ".")
        : Statement.broken(
            about,
            "The signature in \""
                + box
                + "\" was made with a key that "
                + whose
                + ", on a day on which it did not count"
                + key.until().map(last -> ": it is retired since " + last).orElse("")
                + ".");
  }
}

package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.archive.SignerRole;
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
 * @param roles in which each record must be signed
 * @param plan what to call that plan
 * @param fingerprints that were named
 * @param faults what is wrong with the people of the plan
 */
record TrustedKeys(
    List<Person> people,
    Set<SignerRole> roles,
    String plan,
    List<String> fingerprints,
    List<Fault> faults) {

  /**
   * The keys of a plan, and those that were named.
   *
   * @param plan its file, or the folder of its book; empty where no plan counts
   * @param asked roles in which each record must be signed, beside those that the plan names
   * @throws UsageException where that plan can't be read
   */
  static TrustedKeys of(Optional<Path> plan, List<String> fingerprints, List<SignerRole> asked) {
    Optional<Path> file =
        plan.map(path -> Files.isDirectory(path) ? path.resolve(BookFolder.PLAN) : path);
    String name = file.map(Path::toString).orElse("");
    Optional<Binder.Bound<Plans.Signers>> read =
        file.map(path -> Plans.signers(SourceFile.of(name, Disk.read(path))));
    Plans.Signers signers = read.flatMap(Binder.Bound::value).orElse(Plans.Signers.NONE);
    Set<SignerRole> roles = EnumSet.noneOf(SignerRole.class);
    roles.addAll(asked);
    signers.roles().forEach(word -> roles.add(SignerRole.named(word)));
    return new TrustedKeys(
        signers.people(),
        roles,
        name,
        fingerprints,
        read.map(Binder.Bound::faults).orElse(List.of()));
  }

  /**
   * The digits of a fingerprint, without colons and spaces.
   *
   * @throws UsageException where it is no SHA-256 in hexadecimal
   */
  static String digits(String fingerprint) {
    String digits = fingerprint.replaceAll("[: ]", "").toLowerCase(Locale.ROOT);
    if (!digits.matches("[0-9a-f]{64}")) {
      throw new UsageException(
          "proving.fingerprint", "--fingerprint {0} is not 64 hexadecimal digits", fingerprint);
    }
    return digits;
  }

  /** The initials of the person whose key that is; empty where the plan doesn't know it. */
  Optional<String> holder(String print) {
    return people.stream()
        .filter(person -> person.key(print).isPresent())
        .map(Person::initials)
        .findFirst();
  }

  /** Whether a valid signature is by somebody known. */
  Statement confirm(String box, CertificateInfo signer, Optional<OffsetDateTime> time) {
    String print = signer.fingerprint();
    for (Person person : people) {
      Optional<PersonKey> key = person.key(print);
      if (key.isPresent()) {
        return confirm(box, person, key.get(), time);
      }
    }
    if (fingerprints.contains(print)) {
      return new Statement(
          PROVED, "proving.key.named", "It was made with the key that you named, {0}.", print);
    }
    if (people.isEmpty() && fingerprints.isEmpty()) {
      return new Statement(
          OPEN,
          "proving.key.unconfirmed",
          "The signer is not confirmed: the key {0}, whose certificate says \"{1}\", is"
              + " anybody's until its fingerprint is compared. Give --fingerprint or --plan.",
          print,
          signer.name());
    }
    return new Statement(
        BROKEN,
        "proving.key.unknown",
        "The signature in \"{0}\" was made with a key that is not known: the key {1}, whose"
            + " certificate says \"{2}\".",
        box,
        print,
        signer.name());
  }

  private Statement confirm(
      String box, Person holder, PersonKey key, Optional<OffsetDateTime> time) {
    if (time.map(OffsetDateTime::toLocalDate).filter(key::isInForce).isPresent()) {
      return new Statement(
          PROVED,
          "proving.key.known",
          "It was made with the key that {0} has as {1}'s, {2}.",
          plan,
          holder.initials(),
          holder.name());
    }
    return new Statement(BROKEN, "", outOfForce(box, holder, key));
  }

  private Message outOfForce(String box, Person holder, PersonKey key) {
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
        .orElseGet(
            () ->
                say(
                    "proving.key.not-in-force",
                    "The signature in \"{0}\" was made with a key that {1} has as {2}'s, {3}, on a"
                        + " day on which it did not count.",
                    box,
                    plan,
                    holder.initials(),
                    holder.name()));
  }
}

package org.flitchbook.proving;

import static org.flitchbook.proving.Statement.Standing.UNWITNESSED;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.archive.Bundle;
import org.flitchbook.archive.RecordList;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.book.BookFolder;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.LedgerLine;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.plan.Plans;

/**
 * The keys that the signed heads of the ledger know: those in the plan of the last close before
 * each. Anyone who owns the folder can put a key of their own into the plan, close and sign with
 * it; so only a signature by a key that was known before makes further ones known.
 */
record KeysOfHeads(Path book, RecordList list) {

  /** A key as a plan has it, whose and from when to when it counts. */
  private record Holding(String initials, PersonKey key) {}

  /**
   * Names each key that no signed head knows as the plan of today has it.
   *
   * @param people of that plan
   * @param signed valid signatures that state an end of this ledger
   */
  List<Statement> unknown(List<Person> people, List<SignatureCheck.Each> signed) {
    Set<Holding> known = known(signed);
    return holdings(people).filter(each -> !known.contains(each)).map(this::statement).toList();
  }

  private Statement statement(Holding each) {
    return new Statement(
        UNWITNESSED,
        "proving.key.unwitnessed",
        "{0} has the key {1} as {2}'s, and no end of the ledger that a known key signed has it so:"
            + " it was made, retired or put in by hand since. Ask {2}, and compare the"
            + " fingerprint.",
        BookFolder.PLAN,
        each.key().fingerprint(),
        each.initials());
  }

  private static Stream<Holding> holdings(List<Person> people) {
    return people.stream()
        .flatMap(person -> person.keys().stream().map(key -> new Holding(person.initials(), key)));
  }

  private Set<Holding> known(List<SignatureCheck.Each> signed) {
    Set<Holding> known = new HashSet<>();
    signed.stream()
        .sorted(Comparator.comparing(each -> each.ledger().map(Head::sequence).orElse(0L)))
        .forEach(
            each -> {
              Set<Holding> then = planned(each.ledger().orElse(Head.NONE));
              if (has(known.isEmpty() ? then : known, each.fingerprint())) {
                known.addAll(then);
              }
            });
    return known;
  }

  private static boolean has(Set<Holding> keys, String print) {
    return keys.stream().anyMatch(each -> each.key().fingerprint().equals(print));
  }

  /** The keys in the plan of the last close up to a head. */
  private Set<Holding> planned(Head head) {
    return list.closes().stream()
        .filter(line -> line.sequence() <= head.sequence())
        .reduce((earlier, later) -> later)
        .flatMap(this::plan)
        .map(Plans::signers)
        .flatMap(Binder.Bound::value)
        .map(signers -> holdings(signers.people()).collect(Collectors.toSet()))
        .orElse(Set.of());
  }

  /** From the bundle of the close, if it is the one that its line lists. */
  private Optional<SourceFile> plan(LedgerLine close) {
    String hash = close.event().inputs().getOrDefault(BookFolder.PLAN, "");
    return close.event().outputs().keySet().stream()
        .filter(path -> path.endsWith("/" + Bundle.FILE))
        .flatMap(path -> BookFolder.file(book, path).stream())
        .flatMap(zip -> Bundle.read(zip.bytes()).stream())
        .flatMap(bundle -> Optional.ofNullable(bundle.evidence().get(BookFolder.PLAN)).stream())
        .filter(plan -> plan.sha256().equals(hash))
        .findFirst();
  }
}

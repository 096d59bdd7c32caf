package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.ledger.Deed;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.Head;
import org.flitchbook.ledger.Ledger;
import org.flitchbook.plan.Person.PersonKey;
import org.flitchbook.plan.Plan;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.seal.SignatureRequest;
import org.flitchbook.sign.Card;
import org.flitchbook.sign.Opened;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/**
 * Signs a record: checks that it is as it was printed and that the person may, fills the box, and
 * tells the ledger. First the file is put in place, then its line is written.
 */
final class Signer {

  /** Room for a signature alone, and for one with a time stamp in it. */
  private static final int ROOM = 8192;

  private static final int ROOM_WITH_STAMP = 24576;

  private final SignOrder order;
  private final RecordPlace place;
  private final Passphrase passphrase;
  private final Caller caller;

  Signer(SignOrder order, Passphrase passphrase, Caller caller) {
    this.order = order;
    this.place = RecordPlace.of(order.file());
    this.passphrase = passphrase;
    this.caller = caller;
  }

  Answer sign() {
    if (place.shelf().isEmpty()) {
      return sign(Optional.empty());
    }
    try (LedgerFile ledger = LedgerFile.hold(place.shelf().get().book(), caller.progress())) {
      List<Fault> broken = ledger.ledger().faults();
      return broken.isEmpty() ? sign(Optional.of(ledger)) : Answer.broken(broken);
    }
  }

  private Answer sign(Optional<LedgerFile> ledger) {
    byte[] pdf = place.bytes();
    Optional<PdfSignatures> look = PdfFile.signatures(pdf);
    if (look.isEmpty()) {
      return Answer.broken(List.of(noPdf(place.name())));
    }
    List<Fault> faults = new ArrayList<>();
    Optional<Plan> plan = plan(pdf, faults).filter(known -> faults.isEmpty());
    if (plan.isEmpty()) {
      return Answer.broken(faults);
    }
    List<String> notes = new ArrayList<>();
    try {
      ledger.ifPresent(held -> settle(held, plan.get(), pdf, notes));
      refuseTouched(SealsRead.of(pdf, look.get()));
      return sign(pdf, new Signatory(plan.get(), order, look.get(), caller), ledger, notes);
    } catch (Misuse refused) {
      throw refused.after(notes);
    }
  }

  /** What was cut off before is told first, so that the ledger knows the record as it is. */
  private void settle(LedgerFile ledger, Plan plan, byte[] pdf, List<String> notes) {
    RecordPlace.Filed filed = place.shelf().orElseThrow();
    notes.addAll(new Strays(filed.book(), ledger, caller).settle());
    notes.addAll(new UntoldSignatures(filed.book(), filed.day(), ledger, plan, caller).settle());
    refuseOther(ledger, pdf);
  }

  static Fault noPdf(String name) {
    return Fault.broken("record", Place.of(name), "what can't be read as PDF", "a record");
  }

  /** Only the last revision is signed, as the ledger has it. */
  private void refuseOther(LedgerFile ledger, byte[] pdf) {
    RecordPlace.Filed filed = place.shelf().orElseThrow();
    Told told = new Told(filed.book(), filed.day(), ledger.ledger());
    if (filed.revision() != told.revision()) {
      throw new Misuse(
          filed.path() + " is not of that day's last revision in the ledger, r" + told.revision());
    }
    String hash = SourceFile.of(filed.path(), pdf).sha256();
    if (!told.hash(filed.path()).equals(Optional.of(hash))) {
      throw new Misuse(filed.path() + " is not as the ledger tells; prove says more");
    }
  }

  private void refuseTouched(SealsRead seals) {
    if (!seals.isUntouched()) {
      String why = String.join("; ", seals.allFaults());
      throw new Misuse(
          place.name() + " was changed after it was printed, and is not signed: " + why);
    }
  }

  /** The book's plan of today; of a record far from its book, the plan that it carries. */
  private Optional<Plan> plan(byte[] pdf, List<Fault> faults) {
    Optional<Book> book =
        order
            .book()
            .map(Shelf::bookOf)
            .or(() -> place.shelf().map(RecordPlace.Filed::book))
            .map(folder -> Shelf.withoutDays(folder, faults))
            .or(() -> carried(pdf, faults));
    Optional<Judging> judging = book.map(found -> new Judging(found, faults));
    Optional<Plan> plan = judging.flatMap(Judging::plan);
    judging
        .map(Judging::faults)
        .filter(all -> !all.isEmpty())
        .ifPresent(all -> replace(faults, all));
    return plan;
  }

  private Optional<Book> carried(byte[] pdf, List<Fault> faults) {
    Enclosed.Taken taken = Enclosed.of(place.name(), pdf);
    faults.addAll(taken.faults());
    return taken.enclosed().map(Enclosed::book);
  }

  private static void replace(List<Fault> faults, List<Fault> all) {
    List<Fault> copy = List.copyOf(all);
    faults.clear();
    faults.addAll(copy);
  }

  private Answer sign(
      byte[] pdf, Signatory signatory, Optional<LedgerFile> ledger, List<String> settled) {
    signatory.check(place.name(), pdf);
    SigningKey key = key(signatory);
    Optional<String> server =
        signatory.plan().establishment().timestampUrl().filter(url -> order.stamped());
    Optional<Head> head = ledger.map(LedgerFile::ledger).map(Ledger::head);
    int room = server.isPresent() ? ROOM_WITH_STAMP : ROOM;
    SignatureRequest autograph = signatory.autograph(key.card(), head, room);
    caller.progress().accept("signing");
    byte[] signed = PdfFile.sign(pdf, autograph, seal(key, server));
    refuseOwnFault(signed);
    put(signed);
    ledger.ifPresent(held -> held.append(List.of(event(pdf, signed, signatory, key))));
    List<String> notes = new ArrayList<>(settled);
    ledger.ifPresent(held -> notes.addAll(held.notes()));
    return told(signatory, key, server.isPresent(), ledger.map(LedgerFile::ledger), notes);
  }

  /**
   * @throws Misuse where the key can't be opened, or the plan does not have it as the person's
   */
  private SigningKey key(Signatory signatory) {
    String initials = signatory.person().initials();
    KeyRing ring = new KeyRing(order.keys(), initials);
    byte[] file = ring.read();
    char[] word = passphrase.of(initials, false);
    Opened opened = Signing.open(file, word);
    Arrays.fill(word, '\0');
    SigningKey key =
        opened
            .key()
            .orElseThrow(() -> new Misuse(ring.key() + " can't be opened: " + opened.why()));
    refuseUnknown(signatory, key.card());
    return key;
  }

  private static void refuseUnknown(Signatory signatory, Card card) {
    String initials = signatory.person().initials();
    Optional<PersonKey> known = signatory.person().key(card.fingerprint());
    if (known.isEmpty()) {
      throw new Misuse(
          "the plan does not have the key "
              + card.fingerprint()
              + " as "
              + initials
              + "'s; key show tells the line to add");
    }
    boolean counts = known.filter(key -> key.isInForce(signatory.time().toLocalDate())).isPresent();
    if (!counts || !card.isInForce(signatory.time().toInstant())) {
      throw new Misuse("the key of " + initials + " does not count today");
    }
  }

  private UnaryOperator<byte[]> seal(SigningKey key, Optional<String> server) {
    return covered -> {
      byte[] seal = Signing.sign(covered, key);
      return server.map(address -> new Stamper(address).stamped(seal)).orElse(seal);
    };
  }

  /** What prove would refuse later is not written now. */
  private static void refuseOwnFault(byte[] signed) {
    PdfSignatures look = PdfFile.signatures(signed).orElseThrow();
    SealsRead seals = SealsRead.of(signed, look);
    if (!seals.isUntouched()) {
      throw new IllegalStateException("a signature just made: " + seals.allFaults());
    }
  }

  private void put(byte[] signed) {
    try {
      Path folder = Objects.requireNonNull(place.file().getParent());
      Disk.replace(place.file(), signed, place.shelf().map(filed -> filed.folder()).orElse(folder));
    } catch (IOException unwritable) {
      String why = Reason.of(unwritable);
      throw new Misuse("can't write " + place.file() + ": " + why, unwritable);
    }
  }

  private Event event(byte[] before, byte[] signed, Signatory signatory, SigningKey key) {
    RecordPlace.Filed filed = place.shelf().orElseThrow();
    Map<String, String> facts = new TreeMap<>();
    facts.put("role", signatory.role().word());
    facts.put("box", signatory.box());
    facts.put("key", key.card().fingerprint());
    return Event.of(Deed.SIGNED, signatory.time().toInstant(), caller.tool())
        .on(filed.day(), filed.revision())
        .about(place.name())
        .by(signatory.person().initials(), signatory.reason())
        .files(
            Map.of(filed.path(), SourceFile.of("", before).sha256()),
            Map.of(filed.path(), SourceFile.of("", signed).sha256()))
        .facts(facts);
  }

  private Answer told(
      Signatory signatory,
      SigningKey key,
      boolean stamped,
      Optional<Ledger> ledger,
      List<String> notes) {
    StringBuilder text = new StringBuilder();
    text.append(place.file()).append(" is signed.\n");
    text.append("    ").append(signatory.person().name()).append(" as ");
    text.append(signatory.role().word()).append(", ").append(signatory.time()).append('\n');
    text.append("    key ").append(key.card().fingerprint()).append('\n');
    text.append(stamped ? "    with a time stamp\n" : "");
    ledger.map(Ledger::head).ifPresent(head -> text.append(chained(head)));
    notes.forEach(note -> text.append(note).append('\n'));
    return new Answer(Status.WELL, text.toString(), "", List.of(), List.of(place.file()));
  }

  private static String chained(Head head) {
    return "The ledger's last line is now " + head.sequence() + ", hash " + head.hash() + "\n";
  }
}

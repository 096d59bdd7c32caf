package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;
import static org.flitchbook.proving.Statement.Standing.LACKS;
import static org.flitchbook.proving.Statement.Standing.OPEN;
import static org.flitchbook.proving.Statement.Standing.PROVED;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.Session;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.record.DayJudged;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.seal.PdfSignatures.PdfSignature;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.Verification;

/** What one record proves by itself, far from its book as well. */
final class RecordProof {

  private static final int HALF = 32;

  private final String name;
  private final byte[] pdf;
  private final PdfSignatures look;
  private final SignatureCheck check;
  private final TrustedKeys trusted;
  private final List<Statement> statements = new ArrayList<>();
  private Optional<Comparison> comparison = Optional.empty();

  /**
   * @param look at that very file
   */
  RecordProof(String name, byte[] pdf, PdfSignatures look, TrustedKeys trusted) {
    this.name = name;
    this.pdf = pdf;
    this.look = look;
    this.trusted = trusted;
    this.check = SignatureCheck.of(pdf, look);
  }

  /** What its signatures show, and what was changed around them. */
  List<Statement> signatures() {
    check.faults().forEach(fault -> statements.add(new Statement(BROKEN, name, fault)));
    check.signatures().forEach(this::show);
    if (check.signatures().isEmpty() && check.isUntouched()) {
      add(
          OPEN,
          "proving.unsigned",
          "Nobody has signed it: by itself it does not show that its pages are as printed.");
    } else if (check.isUntouched()) {
      add(
          PROVED,
          "proving.nothing-added",
          "Nothing was added since it was printed but its signatures.");
    }
    trusted.fingerprints().forEach(this::demand);
    return statements;
  }

  /**
   * All of it, the verdicts judged again included.
   *
   * @param taken what it carries
   */
  List<Statement> all(EnclosedEvidence.Taken taken, String tool) {
    signatures();
    for (Fault fault : taken.faults()) {
      add(
          BROKEN,
          "proving.unreadable-evidence",
          "What it carries can't be read: {0}.",
          fault.message());
    }
    taken.enclosed().ifPresent(enclosed -> judgeAgain(enclosed, tool));
    missing()
        .forEach(
            role ->
                add(
                    LACKS,
                    "proving.signature.missing",
                    "It must be signed by a {0}, and has no such signature.",
                    role.message()));
    return statements;
  }

  List<SignatureCheck.Each> signed() {
    return check.signatures();
  }

  Optional<Comparison> comparison() {
    return comparison;
  }

  private void add(Statement.Standing standing, String id, String english, Object... arguments) {
    statements.add(new Statement(standing, name, say(id, english, arguments)));
  }

  private void show(SignatureCheck.Each each) {
    PdfSignature signed = each.signed();
    String box = signed.field();
    if (!each.isValid()) {
      add(
          BROKEN,
          "proving.invalid",
          "The signature in \"{0}\" is not valid: {1}.",
          box,
          Listing.semicolons(each.faults()));
      return;
    }
    CertificateInfo signer = each.verification().signer().orElseThrow();
    statements.add(new Statement(PROVED, name, signedBy(signed, signer)));
    statements.add(trusted.confirm(box, signer, signed.time()).about(name));
    if (signed.time().filter(at -> signer.isInForce(at.toInstant())).isEmpty()) {
      add(
          BROKEN,
          "proving.certificate-lapsed",
          "The certificate in \"{0}\" did not hold at the time that is stated.",
          box);
    }
    each.verification()
        .timestamp()
        .ifPresentOrElse(timestamp -> show(box, timestamp), () -> showOwnClock(box));
  }

  private Message signedBy(PdfSignature signed, CertificateInfo signer) {
    Message role = SignerRole.of(signed.field(), look).message();
    return signed
        .time()
        .map(
            time ->
                say(
                    "proving.signed",
                    "Signed in \"{0}\" by {1} as {2}, {3}: the signature is valid and covers all"
                        + " of the record as it then was.",
                    signed.field(),
                    signer.name(),
                    role,
                    time))
        .orElseGet(
            () ->
                say(
                    "proving.signed-without-time",
                    "Signed in \"{0}\" by {1} as {2}, no stated time: the signature is valid and"
                        + " covers all of the record as it then was.",
                    signed.field(),
                    signer.name(),
                    role));
  }

  private void showOwnClock(String box) {
    add(OPEN, "proving.own-clock", "The time in \"{0}\" is that of the signer's own clock.", box);
  }

  private void show(String box, Verification.Timestamp timestamp) {
    add(
        PROVED,
        "proving.timestamp",
        "A time stamp server confirms that the signature in \"{0}\" was there at {1}.",
        box,
        timestamp.time());
    add(
        OPEN,
        "proving.server-unconfirmed",
        "That server is not confirmed: it calls itself \"{0}\", its fingerprint is {1}.",
        timestamp.server().name(),
        timestamp.server().fingerprint());
  }

  /** The roles in which it must be signed, and is not. */
  Set<SignerRole> missing() {
    Set<SignerRole> roles = EnumSet.noneOf(SignerRole.class);
    roles.addAll(trusted.roles());
    check.signatures().stream()
        .filter(SignatureCheck.Each::isValid)
        .forEach(each -> roles.remove(SignerRole.of(each.signed().field(), look)));
    return roles;
  }

  /** Each key that was named must have signed. */
  private void demand(String print) {
    if (check.signatures().stream()
        .noneMatch(each -> each.isValid() && each.fingerprint().equals(print))) {
      add(
          BROKEN,
          "proving.key.missing",
          "No valid signature in it was made with the key that you named, {0}.",
          print);
    }
  }

  private void judgeAgain(EnclosedEvidence enclosed, String tool) {
    compareListed(enclosed);
    if (!isOfVersionStated(enclosed)) {
      add(
          BROKEN,
          "proving.version.misstated",
          "It does not say rightly which version of the program made it.");
    }
    JudgedAgain again = JudgedAgain.of(enclosed, tool);
    again.statements(JudgingChange.ALL).forEach(each -> statements.add(each.about(name)));
    comparison = again.comparison();
    if (enclosed.madeBy().equals(tool)) {
      again.day().ifPresent(day -> comparePages(enclosed, day, tool));
    } else {
      add(
          OPEN,
          "proving.pages.of-other-version",
          "Its pages were printed by version {0} of the program, and were not compared.",
          again.made());
    }
  }

  /** It names a version, and has the form of that version. */
  private static boolean isOfVersionStated(EnclosedEvidence enclosed) {
    return JudgingChange.isVersion(enclosed.madeBy()) && enclosed.isInFormOfItsVersion();
  }

  /** What a person sees is what follows from what it carries. */
  private void comparePages(EnclosedEvidence enclosed, DayJudged day, String tool) {
    Optional<PdfFile.Likeness> likeness = enclosed.likeness(pdf, look, day, tool);
    if (likeness.isEmpty()) {
      add(
          BROKEN,
          "proving.pages.no-record",
          "It does not say rightly which record it is, and can't be printed again.");
    } else if (likeness.get() instanceof PdfFile.Likeness.Different other) {
      add(
          BROKEN,
          "proving.pages.different",
          "Printed again from what it carries, it is another in: {0}.",
          Listing.semicolons(other.parts()));
    } else {
      add(
          PROVED,
          "proving.pages.same",
          "Printed again from what it carries, it is the same: its pages, their structure and all"
              + " that is attached.");
    }
  }

  /** The pages list each enclosed file by its hash, in two halves. */
  private void compareListed(EnclosedEvidence enclosed) {
    String words = PdfFile.words(pdf).orElse("");
    List<SourceFile> files = new ArrayList<>(enclosed.sources());
    files.add(enclosed.findings());
    int before = statements.size();
    for (SourceFile file : files) {
      String hash = file.sha256();
      if (!words.contains(hash.substring(0, HALF)) || !words.contains(hash.substring(HALF))) {
        add(
            BROKEN,
            "proving.other-file",
            "The enclosed {0} is not the one that the pages list.",
            file.name());
      }
    }
    if (statements.size() == before) {
      add(
          PROVED,
          "proving.files",
          "The {0} files that it carries are those that its pages list by SHA-256.",
          files.size());
    }
  }

  List<Map<String, Object>> json(Session session) {
    return check.signatures().stream().map(each -> json(each, session)).toList();
  }

  private Map<String, Object> json(SignatureCheck.Each each, Session session) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("box", each.signed().field());
    tree.put("role", SignerRole.of(each.signed().field(), look).word());
    tree.put("name", each.verification().signer().map(CertificateInfo::name).orElse(""));
    tree.put("fingerprint", each.fingerprint());
    tree.put("time", each.signed().time().map(OffsetDateTime::toString).orElse(""));
    tree.put("reason", each.signed().reason());
    tree.put("valid", each.isValid());
    tree.put("faults", each.faults().stream().map(session::say).toList());
    each.verification()
        .timestamp()
        .ifPresent(timestamp -> tree.put("stamped", timestamp.time().toString()));
    return tree;
  }
}

package org.flitchbook.proving;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.pdf.Look;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.pdf.Signed;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.Timestamp;

/** What one record proves by itself, far from its book as well. */
final class RecordProof {

  private static final int HALF = 32;

  private final String name;
  private final byte[] pdf;
  private final Look look;
  private final SignatureCheck check;
  private final TrustedKeys trusted;
  private final List<Statement> statements = new ArrayList<>();
  private Optional<Comparison> comparison = Optional.empty();

  /**
   * @param look at that very file
   */
  RecordProof(String name, byte[] pdf, Look look, TrustedKeys trusted) {
    this.name = name;
    this.pdf = pdf;
    this.look = look;
    this.trusted = trusted;
    this.check = SignatureCheck.of(pdf, look);
  }

  /** What its signatures show, and what was changed around them. */
  List<Statement> signatures() {
    check.faults().forEach(fault -> broken(sentence(fault)));
    check.signatures().forEach(this::tell);
    if (check.signatures().isEmpty() && check.isUntouched()) {
      open("Nobody has signed it: by itself it does not show that its pages are as printed.");
    } else if (check.isUntouched()) {
      proved("Nothing was added since it was printed but its signatures.");
    }
    tellMissing();
    return statements;
  }

  /** All of it, the verdicts judged again included. */
  List<Statement> all(String tool) {
    signatures();
    EnclosedEvidence.Taken taken = EnclosedEvidence.of(name, pdf);
    taken.faults().forEach(fault -> broken("What it carries can't be read: " + fault + "."));
    taken.enclosed().ifPresent(enclosed -> tellEvidence(enclosed, tool));
    return statements;
  }

  List<SignatureCheck.Each> signed() {
    return check.signatures();
  }

  Optional<Comparison> comparison() {
    return comparison;
  }

  private void proved(String words) {
    statements.add(Statement.proved(name, words));
  }

  private void open(String words) {
    statements.add(Statement.open(name, words));
  }

  private void broken(String words) {
    statements.add(Statement.broken(name, words));
  }

  static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
  }

  private void tell(SignatureCheck.Each each) {
    Signed signed = each.signed();
    String box = "\"" + signed.field() + "\"";
    if (!each.isValid()) {
      broken(
          "The signature in " + box + " is not valid: " + String.join("; ", each.faults()) + ".");
      return;
    }
    CertificateInfo card = each.verification().signer().orElseThrow();
    String time = signed.time().map(OffsetDateTime::toString).orElse("no stated time");
    String role = SignerRole.of(signed.field(), look).word();
    proved(
        "Signed in "
            + box
            + " by "
            + card.name()
            + " as "
            + role
            + ", "
            + time
            + ": the signature is valid and covers all of the record as it then was.");
    statements.add(trusted.confirm(name, signed.field(), card, signed.time()));
    if (signed.time().filter(at -> card.isInForce(at.toInstant())).isEmpty()) {
      broken("The certificate in " + box + " did not hold at the time that is stated.");
    }
    each.verification().stamp().ifPresentOrElse(stamp -> tell(box, stamp), () -> open(clock(box)));
  }

  private static String clock(String box) {
    return "The time in " + box + " is that of the signer's own clock.";
  }

  private void tell(String box, Timestamp stamp) {
    proved(
        "A time stamp server confirms that the signature in "
            + box
            + " was there at "
            + stamp.time()
            + ".");
    open(
        "That server is not confirmed: it calls itself \""
            + stamp.server().name()
            + "\", its fingerprint is "
            + stamp.server().fingerprint()
            + ".");
  }

  private void tellMissing() {
    for (String print : trusted.fingerprints()) {
      boolean found =
          check.signatures().stream()
              .anyMatch(each -> each.isValid() && each.fingerprint().equals(print));
      if (!found) {
        broken("No valid signature in it was made with the key that you named, " + print + ".");
      }
    }
  }

  private void tellEvidence(EnclosedEvidence enclosed, String tool) {
    tellListed(enclosed);
    JudgedAgain again = JudgedAgain.of(name, enclosed, tool);
    statements.addAll(again.statements(JudgingChange.ALL));
    comparison = again.comparison();
  }

  /** The pages list each enclosed file by its hash, in two halves. */
  private void tellListed(EnclosedEvidence enclosed) {
    String words = Pdf.words(pdf).orElse("");
    List<SourceFile> files = new ArrayList<>(enclosed.sources());
    files.add(enclosed.findings());
    int before = statements.size();
    for (SourceFile file : files) {
      String hash = file.sha256();
      if (!words.contains(hash.substring(0, HALF)) || !words.contains(hash.substring(HALF))) {
        broken("The enclosed " + file.name() + " is not the one that the pages list.");
      }
    }
    if (statements.size() == before) {
      proved(
          "The "
              + files.size()
              + " files that it carries are those that its pages list by SHA-256.");
    }
  }

  /** The signatures for programs. */
  List<Map<String, Object>> json() {
    return check.signatures().stream().map(this::json).toList();
  }

  private Map<String, Object> json(SignatureCheck.Each each) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("box", each.signed().field());
    tree.put("role", SignerRole.of(each.signed().field(), look).word());
    tree.put("name", each.verification().signer().map(CertificateInfo::name).orElse(""));
    tree.put("fingerprint", each.fingerprint());
    tree.put("time", each.signed().time().map(OffsetDateTime::toString).orElse(""));
    tree.put("reason", each.signed().reason());
    tree.put("valid", each.isValid());
    tree.put("faults", each.faults());
    each.verification().stamp().ifPresent(stamp -> tree.put("stamped", stamp.time().toString()));
    return tree;
  }
}

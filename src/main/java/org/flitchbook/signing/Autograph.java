package org.flitchbook.signing;

import static org.flitchbook.message.Message.say;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.account.Review;
import org.flitchbook.archive.SignatureCheck;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.ledger.Head;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile.SignatureRequest;
import org.flitchbook.sign.CertificateInfo;

/**
 * What a signature states, and what its box shows.
 *
 * @param review whose entries the record has
 * @param ledger the end of it; empty where the record lies in no book
 */
record Autograph(
    Signatory signatory,
    Review review,
    ZonedDateTime time,
    CertificateInfo key,
    Optional<Head> ledger) {

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss xxx", Locale.ROOT);

  /**
   * For the file.
   *
   * @param room in bytes
   */
  SignatureRequest request(int room) {
    String reason = signatory.reason();
    String why = signatory.role().word() + (reason.isEmpty() ? "" : ": " + reason);
    return new SignatureRequest(
        signatory.box(),
        lines().stream().map(line -> line.in(signatory.plan().words())).toList(),
        signatory.plan().words(),
        signatory.person().name(),
        SignatureCheck.stated(why, ledger),
        time,
        signatory.role() == SignerRole.MAKER,
        room);
  }

  private List<Message> lines() {
    String name = signatory.person().name();
    String initials = signatory.person().initials();
    List<Message> lines = new ArrayList<>();
    lines.add(
        say(
            "signing.box.by",
            "Signed: {0} ({1}), {2}",
            name,
            initials,
            signatory.role().message()));
    lines.add(Message.of(TIME.format(time) + " (" + time.getZone() + ")"));
    lines.add(keyAndLedger());
    lines.add(stands(initials));
    if (!signatory.reason().isEmpty()) {
      lines.add(Message.of(signatory.reason()));
    }
    return lines;
  }

  private Message keyAndLedger() {
    String print = shortened(key.fingerprint());
    return ledger
        .map(
            end ->
                say(
                    "signing.box.key-and-ledger",
                    "Key {0}; ledger {1}, {2}",
                    print,
                    end.sequence(),
                    end.shortHash()))
        .orElse(say("signing.box.key", "Key {0}", print));
  }

  /** The first 16 digits in groups of four, to be read out. */
  private static String shortened(String fingerprint) {
    return fingerprint.substring(0, 16).replaceAll("(.{4})(?=.)", "$1 ");
  }

  /** What the person stands for: their own entries, or those of the others. */
  private Message stands(String initials) {
    if (signatory.role() == SignerRole.MAKER) {
      return say("signing.box.own", "Entries initialled {0}: {1}", initials, review.by(initials));
    }
    return signatory.plan().establishment().soleOperator()
        ? say(
            "signing.box.alone",
            "Sole operator: maker and reviewer are one person, as the plan says.")
        : say("signing.box.reviewed", "Entries reviewed: {0}", review.listWithout(initials));
  }
}

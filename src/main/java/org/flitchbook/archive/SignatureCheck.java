package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.flitchbook.ledger.Head;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.seal.PdfSignatures.PdfSignature;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.Verification;

/**
 * The signatures of a file, each held against the bytes that it covers.
 *
 * @param faults in how the file was saved and signed
 */
public record SignatureCheck(List<Each> signatures, List<Message> faults) {

  private static final Pattern LEDGER = Pattern.compile("; ledger (\\d{1,15}) ([0-9a-f]{64})\\z");

  /**
   * Why somebody signed, as the signature states it. Behind the reason stands the end of the
   * ledger, so that a ledger that was cut off or written again from before that line can't hide it.
   */
  public static String stated(String reason, Optional<Head> ledger) {
    return reason + ledger.map(end -> "; ledger " + end.sequence() + " " + end.hash()).orElse("");
  }

  /** A signature in the file, and what it shows. */
  public record Each(PdfSignature signed, Verification verification) {

    /** Why it is not valid; empty where it is. */
    public List<Message> faults() {
      List<Message> faults = new ArrayList<>(signed.faults());
      faults.addAll(verification.faults());
      return faults;
    }

    public boolean isValid() {
      return faults().isEmpty();
    }

    /** The end of the ledger that it states; empty where it states none. */
    public Optional<Head> ledger() {
      Matcher stated = LEDGER.matcher(signed.reason());
      return stated.find()
          ? Optional.of(new Head(Long.parseLong(stated.group(1)), stated.group(2)))
          : Optional.empty();
    }

    public String fingerprint() {
      return verification.signer().map(CertificateInfo::fingerprint).orElse("");
    }
  }

  /**
   * Checks all of them.
   *
   * @param look at that very file
   */
  public static SignatureCheck of(byte[] pdf, PdfSignatures look) {
    List<Each> signatures =
        look.signatures().stream()
            .map(each -> new Each(each, Signing.verify(each.sealed(), each.covered())))
            .toList();
    List<Message> faults = new ArrayList<>(look.faults());
    if (signatures.stream().allMatch(Each::isValid)) {
      faults.addAll(PdfFile.changes(pdf, look));
    }
    return new SignatureCheck(signatures, faults);
  }

  public boolean isUntouched() {
    return faults.isEmpty() && signatures.stream().allMatch(Each::isValid);
  }

  public Listing allFaults() {
    List<Message> all = new ArrayList<>(faults);
    for (Each each : signatures) {
      for (Message fault : each.faults()) {
        all.add(say("archive.signature", "signature {0}: {1}", each.signed().field(), fault));
      }
    }
    return Listing.semicolons(all);
  }
}

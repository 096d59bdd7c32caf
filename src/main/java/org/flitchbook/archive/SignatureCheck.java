package org.flitchbook.archive;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.pdf.Look;
import org.flitchbook.pdf.Pdf;
import org.flitchbook.pdf.Signed;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.Verification;

/**
 * The signatures of a file, each held against the bytes that it covers.
 *
 * @param faults in how the file was saved and signed, in words
 */
public record SignatureCheck(List<Each> signatures, List<String> faults) {

  /** A signature in the file, and what it shows. */
  public record Each(Signed signed, Verification verification) {

    /** Why it is not valid; empty where it is. */
    public List<String> faults() {
      List<String> faults = new ArrayList<>(signed.faults());
      faults.addAll(verification.faults());
      return faults;
    }

    public boolean isValid() {
      return faults().isEmpty();
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
  public static SignatureCheck of(byte[] pdf, Look look) {
    List<Each> signatures =
        look.signatures().stream()
            .map(each -> new Each(each, Signing.verify(each.sealed(), each.covered())))
            .toList();
    List<String> faults = new ArrayList<>(look.faults());
    if (signatures.stream().allMatch(Each::isValid)) {
      faults.addAll(Pdf.changes(pdf, look));
    }
    return new SignatureCheck(signatures, faults);
  }

  public boolean isUntouched() {
    return faults.isEmpty() && signatures.stream().allMatch(Each::isValid);
  }

  /** All that is wrong, a sentence each. */
  public List<String> allFaults() {
    List<String> all = new ArrayList<>(faults);
    signatures.forEach(
        each ->
            each.faults()
                .forEach(fault -> all.add("signature " + each.signed().field() + ": " + fault)));
    return all;
  }
}

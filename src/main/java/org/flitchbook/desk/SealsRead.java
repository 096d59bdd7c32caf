package org.flitchbook.desk;

import java.util.ArrayList;
import java.util.List;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignature;
import org.flitchbook.seal.PdfSignatures;
import org.flitchbook.sign.Seal;
import org.flitchbook.sign.Signing;

/**
 * The signatures of a file, each held against the bytes that it covers.
 *
 * @param faults in how the file was saved and signed, in words
 */
record SealsRead(List<Each> signatures, List<String> faults) {

  /** A signature in the file, and what it shows. */
  record Each(PdfSignature signed, Seal seal) {

    /** Why it is not valid; empty where it is. */
    List<String> faults() {
      List<String> faults = new ArrayList<>(texts(signed.faults()));
      faults.addAll(seal.faults());
      return faults;
    }

    boolean isValid() {
      return faults().isEmpty();
    }

    String fingerprint() {
      return seal.signer().map(card -> card.fingerprint()).orElse("");
    }
  }

  /**
   * @param look at that very file
   */
  static SealsRead of(byte[] pdf, PdfSignatures look) {
    List<Each> signatures =
        look.signatures().stream()
            .map(each -> new Each(each, Signing.verify(each.sealed(), each.covered())))
            .toList();
    List<String> faults = new ArrayList<>(texts(look.faults()));
    if (signatures.stream().allMatch(Each::isValid)) {
      faults.addAll(texts(PdfFile.changes(pdf, look)));
    }
    return new SealsRead(signatures, faults);
  }

  private static List<String> texts(List<Message> faults) {
    return faults.stream().map(Message::toString).toList();
  }

  boolean isUntouched() {
    return faults.isEmpty() && signatures.stream().allMatch(Each::isValid);
  }

  /** All that is wrong, a sentence each. */
  List<String> allFaults() {
    List<String> all = new ArrayList<>(faults);
    signatures.forEach(
        each ->
            each.faults()
                .forEach(fault -> all.add("signature " + each.signed().field() + ": " + fault)));
    return all;
  }
}

package org.flitchbook.signing;

import java.util.Optional;
import org.flitchbook.job.UsageException;
import org.flitchbook.seal.PdfFile.Likeness;
import org.flitchbook.seal.PdfSignatures;

/**
 * Nobody vouches for pages that do not follow from what the record carries. Those of another
 * version can't be compared: only a further signature is made, since the first one vouches for
 * them.
 *
 * @param name of the record
 * @param tool this version of the program
 */
record PageCheck(String name, Shown shown, String tool) {

  /**
   * Compares its pages with a print made again.
   *
   * @throws UsageException where they are others, or can't be compared before a first signature
   */
  void refuseOther(byte[] pdf, PdfSignatures look) {
    String madeBy = shown.enclosed().madeBy();
    if (madeBy.equals(tool)) {
      refuseDifferent(pdf, look);
    } else if (look.signatures().isEmpty()) {
      throw new UsageException(
          "signing.other-version",
          "{0} was printed by version {1} of the program, and version {2} can't compare its"
              + " pages: close the day again and sign that, or sign with version {1}",
          name,
          madeBy,
          tool);
    }
  }

  private void refuseDifferent(byte[] pdf, PdfSignatures look) {
    Optional<Likeness> likeness = shown.enclosed().likeness(pdf, look, shown.day(), tool);
    if (likeness.filter(found -> found instanceof Likeness.Same).isEmpty()) {
      throw new UsageException(
          "signing.other-pages",
          "{0} is not what its own evidence prints, and is not signed; prove says more",
          name);
    }
  }
}

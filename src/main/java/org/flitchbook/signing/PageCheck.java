package org.flitchbook.signing;

import java.util.Optional;
import org.flitchbook.job.UsageException;
import org.flitchbook.seal.PdfFile.Likeness;
import org.flitchbook.seal.PdfSignatures;

/**
 * Nobody vouches for pages that do not follow from what the record carries. Where this version
 * can't tell, byte for byte, only a further signature is made: the first one vouches for them.
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
    boolean isFirst = look.signatures().isEmpty();
    String madeBy = shown.enclosed().madeBy();
    if (madeBy.equals(tool)) {
      refuseOther(pdf, look, isFirst);
    } else if (isFirst) {
      throw new UsageException(
          "signing.other-version",
          "{0} was printed by version {1} of the program, and version {2} can't compare its"
              + " pages: close the day again and sign that, or sign with version {1}",
          name,
          madeBy,
          tool);
    }
  }

  private void refuseOther(byte[] pdf, PdfSignatures look, boolean isFirst) {
    Optional<Likeness> likeness = shown.enclosed().likeness(pdf, look, shown.day(), tool);
    boolean isSame = likeness.filter(found -> found instanceof Likeness.Same).isPresent();
    boolean isRepacked = likeness.filter(found -> found instanceof Likeness.Repacked).isPresent();
    if (!isSame && !(isRepacked && !isFirst)) {
      throw new UsageException(
          "signing.other-pages",
          "{0} is not what its own evidence prints, and is not signed; prove says more",
          name);
    }
  }
}

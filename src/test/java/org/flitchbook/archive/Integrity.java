package org.flitchbook.archive;

import org.flitchbook.seal.PdfFile;

/** What is looked at first when a record is proved, without judging it again. */
public final class Integrity {

  private Integrity() {}

  /** Whether a file can be read, its signatures are valid and nothing else was added to it. */
  public static boolean isUntouched(byte[] pdf) {
    return PdfFile.signatures(pdf)
        .filter(look -> SignatureCheck.of(pdf, look).isUntouched())
        .isPresent();
  }
}

package org.flitchbook.seal;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/**
 * Takes the text off pages that anybody may have made: a form may draw another ten times, and so
 * on, and a few bytes then say more than can be done.
 */
final class BoundedText extends PDFTextStripper {
  /** A hundred times what a record has. */
  private static final int MOST_OPERATORS = 5_000_000;

  private static final int MOST_LETTERS = 1_000_000;

  private int operators;
  private int letters;

  @Override
  protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
    if (++operators > MOST_OPERATORS) {
      throw new IOException("more than " + MOST_OPERATORS + " steps in the pages");
    }
    super.processOperator(operator, operands);
  }

  @Override
  protected void processTextPosition(TextPosition text) {
    if (++letters > MOST_LETTERS) {
      throw new IllegalStateException("more than " + MOST_LETTERS + " letters in the pages");
    }
    super.processTextPosition(text);
  }
}

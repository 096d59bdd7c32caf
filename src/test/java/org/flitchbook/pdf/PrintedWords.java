package org.flitchbook.pdf;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/**
 * Where each piece of text was printed, piece by piece as it was written.
 *
 * @param size of the type, in points
 * @param box from the top of its capitals to the foot of its descenders
 */
record PrintedWords(int page, String words, double size, Box box) {
  private static final double CAPITAL = 0.729;
  private static final double DESCENDER = 0.2;

  boolean meets(PrintedWords other) {
    return page == other.page && box.meets(other.box);
  }

  static List<PrintedWords> of(byte[] pdf) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      Collector collector = new Collector();
      collector.writeText(file, Writer.nullWriter());
      return collector.all;
    }
  }

  private static final class Collector extends PDFTextStripper {
    final List<PrintedWords> all = new ArrayList<>();
    private final List<TextPosition> piece = new ArrayList<>();

    @Override
    public void showTextString(byte[] string) throws IOException {
      piece.clear();
      super.showTextString(string);
      if (!piece.isEmpty()) {
        all.add(words());
      }
    }

    @Override
    protected void processTextPosition(TextPosition text) {
      if (!text.getUnicode().isBlank() || !piece.isEmpty()) {
        piece.add(text);
      }
      super.processTextPosition(text);
    }

    private PrintedWords words() {
      StringBuilder words = new StringBuilder();
      piece.forEach(each -> words.append(each.getUnicode()));
      TextPosition first = piece.get(0);
      TextPosition last = piece.get(piece.size() - 1);
      double size = first.getFontSizeInPt();
      double top = first.getYDirAdj() - size * CAPITAL;
      double width = last.getXDirAdj() + last.getWidthDirAdj() - first.getXDirAdj();
      Box box = new Box(first.getXDirAdj(), top, width, size * (CAPITAL + DESCENDER));
      return new PrintedWords(getCurrentPageNo(), words.toString(), size, box);
    }
  }
}

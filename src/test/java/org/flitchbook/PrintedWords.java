package org.flitchbook;

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
 * @param page from 1
 * @param size of the type, in points
 * @param top of its capitals, from the upper edge of the page; {@code bottom} that of its
 *     descenders
 */
public record PrintedWords(
    int page, String words, double size, double left, double top, double right, double bottom) {
  private static final double CAPITAL = 0.729;
  private static final double DESCENDER = 0.2;
  private static final double ROUNDING = 0.1;

  /** Whether the two lie on each other. */
  public boolean meets(PrintedWords other) {
    return page == other.page
        && left + ROUNDING < other.right
        && other.left + ROUNDING < right
        && top < other.bottom
        && other.top < bottom;
  }

  public static List<PrintedWords> of(byte[] pdf) throws IOException {
    try (PDDocument file = Loader.loadPDF(pdf)) {
      Collector collector = new Collector();
      collector.writeText(file, Writer.nullWriter());
      return collector.all;
    }
  }

  /** What lies on each other, in words. */
  public static List<String> overlaps(List<PrintedWords> words) {
    List<String> found = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      for (int j = i + 1; j < words.size(); j++) {
        if (words.get(i).meets(words.get(j))) {
          found.add(words.get(i) + " lies on " + words.get(j));
        }
      }
    }
    return found;
  }

  private static final class Collector extends PDFTextStripper {
    final List<PrintedWords> all = new ArrayList<>();
    private final List<TextPosition> piece = new ArrayList<>();

    @Override
    public void showTextString(byte[] string) throws IOException {
      piece.clear();
      super.showTextString(string);
      // A line that was broken at a space still holds it.
      while (!piece.isEmpty() && piece.get(piece.size() - 1).getUnicode().isBlank()) {
        piece.remove(piece.size() - 1);
      }
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
      double left = first.getXDirAdj();
      double bottom = top + size * (CAPITAL + DESCENDER);
      return new PrintedWords(
          getCurrentPageNo(), words.toString(), size, left, top, left + width, bottom);
    }
  }
}

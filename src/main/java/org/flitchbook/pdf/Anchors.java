package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.flitchbook.document.Text;

/** Where the headings came to stand: what bookmarks and links lead to. */
final class Anchors {
  /** Deeper headings stand close to the one above and need no bookmark. */
  private static final int DEEPEST = 2;

  private record Anchor(int level, String text, PDPage page, double top) {
    PDPageXYZDestination destination() {
      PDPageXYZDestination destination = new PDPageXYZDestination();
      destination.setPage(page);
      destination.setLeft(0);
      destination.setTop((int) Math.ceil(top));
      return destination;
    }

    PDOutlineItem item() {
      PDOutlineItem item = new PDOutlineItem();
      item.setTitle(Text.printable(text).replace('\n', ' '));
      item.setDestination(destination());
      return item;
    }
  }

  private final List<Anchor> anchors = new ArrayList<>();

  /**
   * Notes a heading.
   *
   * @param level 0 for the document's title
   * @param top its upper edge, in points from the foot of the paper
   */
  void add(int level, String text, PDPage page, double top) {
    anchors.add(new Anchor(level, text, page, top));
  }

  Optional<PDPageXYZDestination> of(String heading) {
    return anchors.stream()
        .filter(anchor -> anchor.text().equals(heading))
        .findFirst()
        .map(Anchor::destination);
  }

  /** Gives a file its bookmarks: second levels under the first level that they follow. */
  void outline(PDDocument file) {
    PDDocumentOutline outline = new PDDocumentOutline();
    Optional<PDOutlineItem> part = Optional.empty();
    for (Anchor anchor : anchors) {
      if (anchor.level() < DEEPEST) {
        PDOutlineItem item = anchor.item();
        outline.addLast(item);
        part = anchor.level() == 0 ? Optional.empty() : Optional.of(item);
      } else if (anchor.level() == DEEPEST) {
        part.ifPresentOrElse(
            above -> above.addLast(anchor.item()), () -> outline.addLast(anchor.item()));
      }
    }
    file.getDocumentCatalog().setDocumentOutline(outline);
  }
}

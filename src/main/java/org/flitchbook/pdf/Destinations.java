package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.filespecification.PDSimpleFileSpecification;
import org.apache.pdfbox.pdmodel.interactive.action.OpenMode;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionRemoteGoTo;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;
import org.flitchbook.document.Text;

/** Where the headings came to stand, and the bookmarks and links that lead there. */
final class Destinations {
  /** Deeper headings stand close to the one above and need no bookmark. */
  private static final int DEEPEST = 2;

  private record Heading(int level, String text, PDPage page, double top) {
    PDPageXYZDestination destination() {
      PDPageXYZDestination destination = new PDPageXYZDestination();
      destination.setPage(page);
      destination.setLeft(0);
      destination.setTop((int) Math.ceil(top));
      return destination;
    }
  }

  /** A place on a page that leads somewhere, with the element of its text. */
  record Link(Archive.TaggedPage page, Element element, PDRectangle place, Text.Target target) {}

  private final List<Heading> headings = new ArrayList<>();
  private final List<Link> links = new ArrayList<>();

  /**
   * Notes a heading.
   *
   * @param level 0 for the document's title
   * @param top its upper edge, in points from the foot of the paper
   */
  void add(int level, String text, PDPage page, double top) {
    headings.add(new Heading(level, text, page, top));
  }

  void add(Link link) {
    links.add(link);
  }

  /** Gives a file its links and its bookmarks: second levels under the first that they follow. */
  void finish(PDDocument file) throws IOException {
    for (Link each : links) {
      lay(each);
    }
    PDDocumentOutline outline = new PDDocumentOutline();
    PDOutlineNode above = outline;
    for (Heading heading : headings) {
      PDOutlineItem item = new PDOutlineItem();
      item.setTitle(Text.printable(heading.text()).replace('\n', ' '));
      item.setDestination(heading.destination());
      if (heading.level() == DEEPEST) {
        above.addLast(item);
      } else if (heading.level() < DEEPEST) {
        outline.addLast(item);
        above = heading.level() == 0 ? outline : item;
      }
    }
    file.getDocumentCatalog().setDocumentOutline(outline);
  }

  /** Lays a link over the text that leads somewhere (ISO 14289-1, 7.18.5). */
  private void lay(Link over) throws IOException {
    PDAnnotationLink link = new PDAnnotationLink();
    if (!lead(link, over.target())) {
      over.element().become("Span");
      return;
    }
    link.setContents(over.target().words());
    PDBorderStyleDictionary none = new PDBorderStyleDictionary();
    none.setWidth(0);
    link.setBorderStyle(none);
    over.page().lay(link, over.place(), over.element());
  }

  /** Whether there is what the link is to lead to. */
  private boolean lead(PDAnnotationLink link, Text.Target target) throws IOException {
    if (target instanceof Text.Target.File file) {
      link.setAction(remote(file.words()));
      return true;
    }
    Optional<Heading> heading =
        headings.stream().filter(each -> each.text().equals(target.words())).findFirst();
    heading.ifPresent(found -> link.setDestination(found.destination()));
    return heading.isPresent();
  }

  /**
   * Not as a URI: a reader would ask before it opens one. The file is named by a string, since a
   * dictionary would have to state its relationship, as that of an attachment must.
   */
  private static PDActionRemoteGoTo remote(String name) throws IOException {
    PDSimpleFileSpecification file = new PDSimpleFileSpecification();
    file.setFile(name);
    PDPageFitDestination firstPage = new PDPageFitDestination();
    firstPage.setPageNumber(0);
    PDActionRemoteGoTo action = new PDActionRemoteGoTo();
    action.setFile(file);
    action.setD(firstPage.getCOSObject());
    action.setOpenInNewWindow(OpenMode.NEW_WINDOW);
    return action;
  }
}

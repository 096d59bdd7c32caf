package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.filespecification.PDSimpleFileSpecification;
import org.apache.pdfbox.pdmodel.interactive.action.OpenMode;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionRemoteGoTo;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
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

    PDOutlineItem bookmark() {
      PDOutlineItem item = new PDOutlineItem();
      item.setTitle(Text.printable(text).replace('\n', ' '));
      item.setDestination(destination());
      return item;
    }
  }

  private final List<Heading> headings = new ArrayList<>();

  /**
   * Notes a heading.
   *
   * @param level 0 for the document's title
   * @param top its upper edge, in points from the foot of the paper
   */
  void add(int level, String text, PDPage page, double top) {
    headings.add(new Heading(level, text, page, top));
  }

  /** Gives a file its bookmarks: second levels under the first level that they follow. */
  void addBookmarks(PDDocument file) {
    PDDocumentOutline outline = new PDDocumentOutline();
    Optional<PDOutlineItem> part = Optional.empty();
    for (Heading heading : headings) {
      if (heading.level() < DEEPEST) {
        PDOutlineItem item = heading.bookmark();
        outline.addLast(item);
        part = heading.level() == 0 ? Optional.empty() : Optional.of(item);
      } else if (heading.level() == DEEPEST) {
        part.ifPresentOrElse(
            above -> above.addLast(heading.bookmark()), () -> outline.addLast(heading.bookmark()));
      }
    }
    file.getDocumentCatalog().setDocumentOutline(outline);
  }

  /**
   * Lays the links of a page over the text that leads somewhere (ISO 14289-1, 7.18.5).
   *
   * @param number that of the first link in the parent tree
   * @return the elements of the links, in the order of their numbers
   */
  List<Element> addLinks(TaggedPage page, int number) throws IOException {
    List<Element> elements = new ArrayList<>();
    for (TaggedPage.Link each : page.links) {
      Optional<PDAnnotationLink> link = link(each.target());
      if (link.isPresent()) {
        lay(link.get(), each, number + elements.size());
        page.page.getAnnotations().add(link.get());
        each.element().object(page.page.getCOSObject(), link.get().getCOSObject());
        elements.add(each.element());
      } else {
        each.element().become("Span");
      }
    }
    return elements;
  }

  private static void lay(PDAnnotationLink link, TaggedPage.Link over, int number) {
    link.setRectangle(over.place());
    link.setContents(over.target().words());
    link.setPrinted(true);
    link.setStructParent(number);
    PDBorderStyleDictionary none = new PDBorderStyleDictionary();
    none.setWidth(0);
    link.setBorderStyle(none);
  }

  private Optional<PDAnnotationLink> link(Text.Target target) throws IOException {
    PDAnnotationLink link = new PDAnnotationLink();
    if (target instanceof Text.Target.File file) {
      link.setAction(remote(file.name()));
      return Optional.of(link);
    }
    Optional<Heading> heading =
        headings.stream().filter(each -> each.text().equals(target.words())).findFirst();
    heading.ifPresent(found -> link.setDestination(found.destination()));
    return heading.map(found -> link);
  }

  /**
   * Not as a URI: a reader would ask before it opens one. The file is named by a string, since a
   * dictionary would have to state its relationship, as that of an attachment must.
   */
  private static PDActionRemoteGoTo remote(String name) throws IOException {
    PDSimpleFileSpecification file = new PDSimpleFileSpecification();
    file.setFile(name);
    COSArray firstPage = new COSArray();
    firstPage.add(COSInteger.ZERO);
    firstPage.add(COSName.getPDFName("Fit"));
    PDActionRemoteGoTo action = new PDActionRemoteGoTo();
    action.setFile(file);
    action.setD(firstPage);
    action.setOpenInNewWindow(OpenMode.NEW_WINDOW);
    return action;
  }
}

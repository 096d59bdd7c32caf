package org.flitchbook.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.common.filespecification.PDSimpleFileSpecification;
import org.apache.pdfbox.pdmodel.interactive.action.OpenMode;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionRemoteGoTo;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;
import org.flitchbook.document.Text;

/** Lays links over the pieces of text that lead somewhere (ISO 14289-1, 7.18.5). */
final class Links {
  private final Anchors anchors;

  Links(Anchors anchors) {
    this.anchors = anchors;
  }

  /**
   * Adds the links of a page.
   *
   * @param number that of the first link in the parent tree
   * @return the elements of the links, in the order of their numbers
   */
  List<Element> add(Sheet sheet, int number) throws IOException {
    List<Element> elements = new ArrayList<>();
    for (Sheet.Link each : sheet.links()) {
      Optional<PDAnnotationLink> link = link(each.target());
      if (link.isPresent()) {
        lay(link.get(), each, number + elements.size());
        sheet.page.getAnnotations().add(link.get());
        each.element().object(sheet.page.getCOSObject(), link.get().getCOSObject());
        elements.add(each.element());
      } else {
        each.element().become("Span");
      }
    }
    return elements;
  }

  private static void lay(PDAnnotationLink link, Sheet.Link over, int number) {
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
    return anchors
        .of(target.words())
        .map(
            destination -> {
              link.setDestination(destination);
              return link;
            });
  }

  /**
   * Not as a URI: a reader would ask before it opens one. The file is named by a string, since a
   * dictionary would have to tell its relationship, as that of an attachment must.
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

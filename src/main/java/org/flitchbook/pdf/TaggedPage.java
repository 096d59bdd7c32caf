package org.flitchbook.pdf;

import java.io.IOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;

/** A page and the elements that its marked content belongs to, by number. */
record TaggedPage(PDPage page, Archive archive, COSArray owners) {

  TaggedPage(PDPage page, Archive archive) {
    this(page, archive, new COSArray());
    page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
    page.setStructParents(archive.number(owners));
  }

  /** Notes that the next marked content is the element's, and returns its number. */
  int mark(Element element) {
    int mark = owners.size();
    owners.add(element.dictionary);
    element.content(page.getCOSObject(), mark);
    return mark;
  }

  /**
   * Lays a field to sign in over its place, so that a signature later changes nothing but the
   * field. It shows nothing until it is signed: the lines for ink lie under it.
   *
   * @param name of the field in the file
   * @param purpose what it is for, to a reader who can't see it
   */
  void field(Element element, String name, String purpose, PDRectangle place) throws IOException {
    PDAppearanceStream nothing = new PDAppearanceStream(archive.file);
    nothing.setBBox(new PDRectangle(place.getWidth(), place.getHeight()));
    PDAppearanceDictionary appearance = new PDAppearanceDictionary();
    appearance.getCOSObject().setDirect(true);
    appearance.setNormalAppearance(nothing);
    PDAnnotationWidget field = new PDAnnotationWidget();
    field.getCOSObject().setName(COSName.FT, "Sig");
    field.getCOSObject().setString(COSName.T, name);
    field.getCOSObject().setString(COSName.TU, purpose);
    field.setAppearance(appearance);
    lay(field, place, element);
    archive.add(field);
  }

  /** Lays what can be clicked over its place and ties it to its element. */
  void lay(PDAnnotation annotation, PDRectangle place, Element element) throws IOException {
    annotation.setRectangle(place);
    annotation.setPrinted(true);
    annotation.setPage(page);
    annotation.setStructParent(archive.number(element.dictionary));
    page.getAnnotations().add(annotation);
    element.object(page.getCOSObject(), annotation.getCOSObject());
  }
}

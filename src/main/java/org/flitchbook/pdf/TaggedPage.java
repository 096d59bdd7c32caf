package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.flitchbook.document.Text;

/** A page and the elements that its marked content belongs to, by number. */
final class TaggedPage {
  final PDPage page;
  private final List<Element> owners = new ArrayList<>();
  final List<SignatureField> fields = new ArrayList<>();
  final List<Link> links = new ArrayList<>();

  /** A place on the page that leads somewhere, with the element of its text. */
  record Link(Element element, PDRectangle place, Text.Target target) {}

  TaggedPage(PDPage page) {
    this.page = page;
  }

  /** Notes that the next marked content is the element's, and returns its number. */
  int mark(Element element) {
    int mark = owners.size();
    owners.add(element);
    element.content(page.getCOSObject(), mark);
    return mark;
  }

  /** The page's entry in the parent tree. */
  COSArray owners() {
    COSArray array = new COSArray();
    owners.forEach(owner -> array.add(owner.dictionary()));
    return array;
  }

  /**
   * A field to sign in, made with the page, so that a signature later changes nothing but the
   * field. It shows nothing until it is signed: the lines for ink lie under it.
   *
   * @param name of the field in the file
   * @param purpose what it is for, to a reader who can't see it
   * @param element of the structure tree
   * @param place in points from the upper left of the paper
   */
  record SignatureField(String name, String purpose, Element element, Rectangle place) {
    private static final int PRINTED = 4;

    /** The field with its only widget, which are one dictionary. */
    COSDictionary make(PDDocument file, PDPage page, int number) {
      COSDictionary field = new COSDictionary();
      field.setItem(COSName.TYPE, COSName.ANNOT);
      field.setName(COSName.SUBTYPE, "Widget");
      field.setName(COSName.FT, "Sig");
      field.setString(COSName.T, name);
      field.setString(COSName.TU, purpose);
      field.setInt(COSName.F, PRINTED);
      field.setItem(COSName.RECT, rectangle(page).getCOSArray());
      field.setItem(COSName.P, page.getCOSObject());
      field.setItem(COSName.STRUCT_PARENT, COSInteger.get(number));
      field.setItem(COSName.AP, appearance(nothing(file)));
      element.object(page.getCOSObject(), field);
      add(page.getCOSObject(), field);
      return field;
    }

    private PDRectangle rectangle(PDPage page) {
      float bottom = (float) (page.getMediaBox().getHeight() - place.bottom());
      return new PDRectangle(
          (float) place.left(), bottom, (float) place.width(), (float) place.height());
    }

    private PDAppearanceStream nothing(PDDocument file) {
      PDAppearanceStream stream = new PDAppearanceStream(file);
      stream.setBBox(new PDRectangle((float) place.width(), (float) place.height()));
      return stream;
    }

    static COSDictionary appearance(PDAppearanceStream normal) {
      COSDictionary appearance = new COSDictionary();
      appearance.setDirect(true);
      appearance.setItem(COSName.N, normal);
      return appearance;
    }

    private static void add(COSDictionary page, COSDictionary field) {
      COSArray annotations = page.getCOSArray(COSName.ANNOTS);
      if (annotations == null) {
        annotations = new COSArray();
        page.setItem(COSName.ANNOTS, annotations);
      }
      annotations.add(field);
    }
  }
}

package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.flitchbook.document.Text;

/** A page and the elements that its marked content belongs to, by number. */
final class Sheet {
  final PDPage page;
  private final List<Element> owners = new ArrayList<>();
  private final List<SignatureField> fields = new ArrayList<>();
  private final List<Link> links = new ArrayList<>();

  /** A place on the page that leads somewhere, with the element of its text. */
  record Link(Element element, PDRectangle place, Text.Target target) {}

  Sheet(PDPage page) {
    this.page = page;
  }

  /** Notes that the next marked content is the element's, and returns its number. */
  int mark(Element element) {
    int mark = owners.size();
    owners.add(element);
    element.content(page.getCOSObject(), mark);
    return mark;
  }

  void link(Link link) {
    links.add(link);
  }

  List<Link> links() {
    return links;
  }

  void field(SignatureField field) {
    fields.add(field);
  }

  List<SignatureField> fields() {
    return fields;
  }

  /** The page's entry in the parent tree. */
  COSArray owners() {
    COSArray array = new COSArray();
    owners.forEach(owner -> array.add(owner.dictionary()));
    return array;
  }
}

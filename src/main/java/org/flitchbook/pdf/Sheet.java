package org.flitchbook.pdf;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDPage;

/** A page and the elements that its marked content belongs to, by number. */
final class Sheet {
  final PDPage page;
  private final List<Element> owners = new ArrayList<>();

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

  /** The page's entry in the parent tree. */
  COSArray owners() {
    COSArray array = new COSArray();
    owners.forEach(owner -> array.add(owner.dictionary()));
    return array;
  }
}

package org.flitchbook.pdf;

import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;

/** An element of the structure tree: a paragraph, a table cell, a figure. */
final class Element implements Pen.Owner {
  final COSDictionary dictionary = new COSDictionary();

  /** An element below another, or below the root of the tree. */
  Element(String type, COSDictionary parent) {
    become(type);
    dictionary.setItem(COSName.P, parent);
  }

  /** A new element, last among the children of this one. */
  Element child(String type) {
    Element child = new Element(type, dictionary);
    add(child.dictionary);
    return child;
  }

  /** Takes another type, whose content is marked as it was. */
  void become(String type) {
    dictionary.setName(COSName.S, type);
  }

  COSName type() {
    return dictionary.getCOSName(COSName.S);
  }

  Element alternative(String words) {
    dictionary.setString(COSName.ALT, words);
    return this;
  }

  /** What is to be read out in place of the element's own text. */
  Element actual(String words) {
    dictionary.setString(COSName.ACTUAL_TEXT, words);
    return this;
  }

  /** Says which cells a head of a table stands for: {@code Column} or {@code Row}. */
  Element scope(String scope) {
    attributes("Table").setName(COSName.getPDFName("Scope"), scope);
    return this;
  }

  /** Where a figure stands on its page, in points from the lower left. */
  void box(double left, double bottom, double right, double top) {
    COSArray box = new COSArray();
    for (double edge : new double[] {left, bottom, right, top}) {
      box.add(new COSFloat((float) edge));
    }
    COSDictionary attributes = attributes("Layout");
    attributes.setItem(COSName.BBOX, box);
    attributes.setName(COSName.getPDFName("Placement"), "Block");
  }

  private COSDictionary attributes(String owner) {
    COSDictionary attributes = new COSDictionary();
    attributes.setDirect(true);
    attributes.setName(COSName.O, owner);
    dictionary.setItem(COSName.A, attributes);
    return attributes;
  }

  /** Adds marked content on a page; an element may go on over several pages. */
  void content(COSDictionary page, int mark) {
    COSDictionary first = dictionary.getCOSDictionary(COSName.PG);
    if (first == null) {
      dictionary.setItem(COSName.PG, page);
    }
    if (first == null || first == page) {
      add(COSInteger.get(mark));
    } else {
      reference("MCR", page).setInt(COSName.MCID, mark);
    }
  }

  /** Adds an annotation that belongs to the element. */
  void object(COSDictionary page, COSDictionary annotation) {
    reference("OBJR", page).setItem(COSName.OBJ, annotation);
  }

  private COSDictionary reference(String type, COSDictionary page) {
    COSDictionary reference = new COSDictionary();
    reference.setDirect(true);
    reference.setName(COSName.TYPE, type);
    reference.setItem(COSName.PG, page);
    add(reference);
    return reference;
  }

  private void add(COSBase kid) {
    COSBase kids = dictionary.getDictionaryObject(COSName.K);
    if (kids instanceof COSArray array) {
      array.add(kid);
    } else if (kids == null) {
      dictionary.setItem(COSName.K, kid);
    } else {
      COSArray array = new COSArray();
      array.setDirect(true);
      array.add(kids);
      array.add(kid);
      dictionary.setItem(COSName.K, array);
    }
  }
}

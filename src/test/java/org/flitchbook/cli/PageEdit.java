package org.flitchbook.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationRubberStamp;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;

/** What somebody can do to what a person sees, hears or takes out of a record. */
enum PageEdit {
  PAINTED_OVER {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      PDPage page = page(file, chance);
      try (PDPageContentStream out =
          new PDPageContentStream(file, page, PDPageContentStream.AppendMode.APPEND, true, true)) {
        paint(out, chance.nextInt(60, 300), chance.nextInt(100, 700));
      }
      changed(page.getCOSObject(), page.getResources().getCOSObject());
    }
  },
  TEXT_CHANGED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      PDPage page = page(file, chance);
      byte[] content = content(page);
      List<Integer> digits = new ArrayList<>();
      for (int i = 1; i < content.length - 1; i++) {
        if (content[i] >= '1' && content[i] <= '8') {
          digits.add(i);
        }
      }
      content[digits.get(chance.nextInt(digits.size()))]++;
      page.setContents(new PDStream(file, new ByteArrayInputStream(content), COSName.FLATE_DECODE));
      changed(page.getCOSObject());
    }
  },
  PAGE_REMOVED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      file.removePage(chance.nextInt(file.getNumberOfPages()));
      changed(file.getPages().getCOSObject());
    }
  },
  PAGE_REPEATED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      file.importPage(page(file, chance));
      changed(file.getPages().getCOSObject());
    }
  },
  PAGES_SWAPPED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      int one = chance.nextInt(file.getNumberOfPages());
      int other = (one + 1 + chance.nextInt(file.getNumberOfPages() - 1)) % file.getNumberOfPages();
      COSDictionary first = file.getPage(one).getCOSObject();
      COSDictionary second = file.getPage(other).getCOSObject();
      COSBase content = first.getItem(COSName.CONTENTS);
      first.setItem(COSName.CONTENTS, second.getItem(COSName.CONTENTS));
      second.setItem(COSName.CONTENTS, content);
      changed(first, second);
    }
  },
  PAGE_TURNED_OR_CUT {
    @Override
    void to(PDDocument file, SplittableRandom chance) {
      PDPage page = page(file, chance);
      if (chance.nextBoolean()) {
        page.setRotation(90);
      } else {
        page.setCropBox(new PDRectangle(40, 40, 500, chance.nextInt(200, 600)));
      }
      changed(page.getCOSObject());
    }
  },
  STAMP_ADDED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      PDPage page = page(file, chance);
      PDAnnotationRubberStamp stamp = new PDAnnotationRubberStamp();
      stamp.setRectangle(new PDRectangle(60, chance.nextInt(100, 700), 200, 60));
      stamp.setAppearance(appearance(file));
      List<PDAnnotation> all = page.getAnnotations();
      all.add(stamp);
      page.setAnnotations(all);
      changed(page.getCOSObject());
    }
  },
  BOX_PAINTED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      var fields = file.getDocumentCatalog().getAcroForm(null).getFields();
      var box = fields.get(chance.nextInt(fields.size())).getWidgets().get(0);
      if (chance.nextBoolean()) {
        box.setRectangle(new PDRectangle(50, 50, 500, 700));
      }
      box.setAppearance(appearance(file));
      changed(box.getCOSObject());
    }
  },
  FONT_SWAPPED {
    @Override
    void to(PDDocument file, SplittableRandom chance) {
      COSDictionary fonts =
          page(file, chance).getResources().getCOSObject().getCOSDictionary(COSName.FONT);
      List<COSName> names = List.copyOf(fonts.keySet());
      COSName name = names.get(chance.nextInt(names.size()));
      fonts.setItem(name, new PDType1Font(Standard14Fonts.FontName.SYMBOL).getCOSObject());
      changed(fonts, page(file, chance).getCOSObject());
    }
  },
  READ_OUT_OTHERWISE {
    @Override
    void to(PDDocument file, SplittableRandom chance) {
      COSDictionary root = file.getDocumentCatalog().getCOSObject();
      List<COSDictionary> elements = new ArrayList<>();
      elements(root.getCOSDictionary(COSName.STRUCT_TREE_ROOT), elements);
      COSDictionary element = elements.get(chance.nextInt(elements.size()));
      element.setString(chance.nextBoolean() ? COSName.ALT : COSName.ACTUAL_TEXT, "met, released");
      changed(element);
    }
  },
  ATTACHMENT_CHANGED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      List<COSStream> all = attachments(file);
      COSStream stream = all.get(chance.nextInt(all.size()));
      byte[] bytes = stream.createInputStream().readAllBytes();
      bytes[chance.nextInt(bytes.length)] ^= 1;
      try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
        out.write(bytes);
      }
      changed(stream);
    }
  },
  ATTACHMENTS_SWAPPED {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      var names = file.getDocumentCatalog().getNames().getEmbeddedFiles().getNames();
      List<String> keys = List.copyOf(names.keySet());
      int one = chance.nextInt(keys.size());
      int other = (one + 1 + chance.nextInt(keys.size() - 1)) % keys.size();
      COSDictionary first = names.get(keys.get(one)).getCOSObject();
      COSDictionary second = names.get(keys.get(other)).getCOSObject();
      COSBase content = first.getItem(COSName.EF);
      first.setItem(COSName.EF, second.getItem(COSName.EF));
      second.setItem(COSName.EF, content);
      changed(first, second);
    }
  },
  TITLE_CHANGED {
    @Override
    void to(PDDocument file, SplittableRandom chance) {
      file.getDocumentInformation().setTitle("Met and released " + chance.nextInt(100));
      changed(file.getDocumentInformation().getCOSObject());
    }
  },
  OPENED_WITH_ACTION {
    @Override
    void to(PDDocument file, SplittableRandom chance) {
      COSDictionary action = new COSDictionary();
      action.setName(COSName.S, "JavaScript");
      action.setString(COSName.JS, "app.alert('met " + chance.nextInt(100) + "')");
      COSDictionary catalog = file.getDocumentCatalog().getCOSObject();
      catalog.setItem(COSName.OPEN_ACTION, action);
      changed(catalog);
    }
  },
  HIDDEN_BY_LAYER {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      PDPage page = page(file, chance);
      PDFormXObject form = new PDFormXObject(file);
      form.setBBox(page.getMediaBox());
      form.setResources(page.getResources());
      try (OutputStream out = form.getContentStream().createOutputStream(COSName.FLATE_DECODE)) {
        out.write(content(page));
      }
      page.getResources().put(COSName.getPDFName("Whole"), form);
      page.setContents(
          new PDStream(
              file, new ByteArrayInputStream("/Whole Do".getBytes(StandardCharsets.UTF_8))));
      changed(page.getCOSObject(), page.getResources().getCOSObject());
    }
  },
  PAGE_NAMED_LIKE_A_BOX {
    @Override
    void to(PDDocument file, SplittableRandom chance) throws IOException {
      PDPage page = page(file, chance);
      page.getCOSObject().setName(COSName.FT, "Sig");
      page.getCOSObject().setString(COSName.T, "reviewed");
      PAINTED_OVER.to(file, chance);
      changed(page.getCOSObject());
    }
  };

  /** Does it, to a part of the file drawn by chance. */
  abstract void to(PDDocument file, SplittableRandom chance) throws IOException;

  private static PDPage page(PDDocument file, SplittableRandom chance) {
    return file.getPage(chance.nextInt(file.getNumberOfPages()));
  }

  private static byte[] content(PDPage page) throws IOException {
    try (InputStream in = page.getContents()) {
      return in.readAllBytes();
    }
  }

  private static void paint(PDPageContentStream out, float x, float y) throws IOException {
    out.setNonStrokingColor(1f, 1f, 1f);
    out.addRect(x, y, 240, 40);
    out.fill();
    out.setNonStrokingColor(0f, 0f, 0f);
    out.beginText();
    out.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA_BOLD), 24);
    out.newLineAtOffset(x + 8, y + 10);
    out.showText("MET, released");
    out.endText();
  }

  private static PDAppearanceDictionary appearance(PDDocument file) throws IOException {
    PDAppearanceStream look = new PDAppearanceStream(file);
    look.setBBox(new PDRectangle(240, 60));
    look.setResources(new PDResources());
    try (PDPageContentStream out = new PDPageContentStream(file, look)) {
      paint(out, 0, 10);
    }
    PDAppearanceDictionary appearance = new PDAppearanceDictionary();
    appearance.setNormalAppearance(look);
    return appearance;
  }

  private static List<COSStream> attachments(PDDocument file) throws IOException {
    return file.getDocumentCatalog().getNames().getEmbeddedFiles().getNames().values().stream()
        .map(each -> each.getEmbeddedFile().getCOSObject())
        .filter(stream -> stream.getCOSDictionary(COSName.PARAMS).getInt(COSName.SIZE) > 0)
        .toList();
  }

  private static void elements(COSBase node, List<COSDictionary> found) {
    COSBase value = node instanceof COSObject reference ? reference.getObject() : node;
    if (value instanceof COSArray array) {
      array.forEach(each -> elements(each, found));
    } else if (value instanceof COSDictionary element) {
      if (element.containsKey(COSName.S)) {
        found.add(element);
      }
      elements(element.getDictionaryObject(COSName.K), found);
    }
  }

  private static void changed(COSDictionary... dictionaries) {
    for (COSDictionary each : dictionaries) {
      each.setNeedToBeUpdated(true);
    }
  }

  /** In words, such as {@code painted over}. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}

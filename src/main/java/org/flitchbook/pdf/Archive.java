package org.flitchbook.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.flitchbook.document.Document;

/**
 * What makes a file archival (PDF/A-3a, ISO 19005-3) and accessible (PDF/UA-1, ISO 14289-1): the
 * structure tree, the colour profile, the metadata.
 */
final class Archive {
  private static final COSName PARENT_TREE = COSName.getPDFName("ParentTree");
  private static final COSName NEXT_KEY = COSName.getPDFName("ParentTreeNextKey");

  private final PDDocument file;
  private final Metadata metadata;
  private final COSDictionary tree = new COSDictionary();
  private final Element root = new Element("Document", tree);

  /** What belongs to which element, by number: first the content of each page. */
  private final List<COSBase> parents = new ArrayList<>();

  Archive(PDDocument file, Document document) {
    this.file = file;
    this.metadata = new Metadata(document);
    file.setDocumentId(metadata.number());
    file.setDocumentInformation(metadata.information());
    file.getDocument().setVersion(1.7f);
    file.setVersion(1.7f);
    tree.setName(COSName.TYPE, "StructTreeRoot");
    tree.setItem(COSName.K, root.dictionary());
  }

  Element root() {
    return root;
  }

  /** Completes the catalog once all pages are there. */
  void finish(List<TaggedPage> pages, Destinations destinations) throws IOException {
    COSDictionary catalog = file.getDocumentCatalog().getCOSObject();
    file.getDocumentCatalog().setLanguage(metadata.language());
    catalog.setItem(COSName.MARK_INFO, flag("Marked"));
    catalog.setItem(COSName.VIEWER_PREFERENCES, flag("DisplayDocTitle"));
    pages.forEach(page -> parents.add(page.owners()));
    for (TaggedPage page : pages) {
      for (Element link : destinations.addLinks(page, parents.size())) {
        parents.add(link.dictionary());
      }
    }
    addFields(pages);
    addParents();
    destinations.addBookmarks(file);
    catalog.setItem(COSName.STRUCT_TREE_ROOT, tree);
    catalog.setItem(COSName.OUTPUT_INTENTS, outputIntents());
    byte[] packet = metadata.packet().getBytes(StandardCharsets.UTF_8);
    PDMetadata stream = new PDMetadata(file, new ByteArrayInputStream(packet));
    file.getDocumentCatalog().setMetadata(stream);
  }

  void enclose(List<Attachment> attachments) throws IOException {
    new AttachmentWriter(file, metadata.made()).add(attachments);
  }

  private static COSDictionary flag(String name) {
    COSDictionary dictionary = new COSDictionary();
    dictionary.setDirect(true);
    dictionary.setBoolean(name, true);
    return dictionary;
  }

  private void addFields(List<TaggedPage> pages) {
    COSArray fields = new COSArray();
    for (TaggedPage page : pages) {
      for (TaggedPage.SignatureField each : page.fields) {
        fields.add(each.make(file, page.page, parents.size()));
        parents.add(each.element().dictionary());
      }
    }
    if (fields.size() > 0) {
      COSDictionary form = new COSDictionary();
      form.setItem(COSName.FIELDS, fields);
      file.getDocumentCatalog().getCOSObject().setItem(COSName.ACRO_FORM, form);
    }
  }

  private void addParents() {
    COSArray numbers = new COSArray();
    for (int i = 0; i < parents.size(); i++) {
      numbers.add(COSInteger.get(i));
      numbers.add(parents.get(i));
    }
    COSDictionary dictionary = new COSDictionary();
    dictionary.setItem(COSName.NUMS, numbers);
    tree.setItem(PARENT_TREE, dictionary);
    tree.setInt(NEXT_KEY, parents.size());
  }

  /** By hand: PDFBox's own class rewrites the profile through the platform's colour code. */
  private COSArray outputIntents() throws IOException {
    PDStream profile =
        new PDStream(
            file, new ByteArrayInputStream(Pdf.resource("srgb.icc")), COSName.FLATE_DECODE);
    profile.getCOSObject().setInt(COSName.N, 3);
    COSDictionary intent = new COSDictionary();
    intent.setName(COSName.TYPE, "OutputIntent");
    intent.setName(COSName.S, "GTS_PDFA1");
    intent.setString(COSName.OUTPUT_CONDITION_IDENTIFIER, "sRGB IEC61966-2.1");
    intent.setString(COSName.INFO, "sRGB IEC61966-2.1");
    intent.setItem(COSName.DEST_OUTPUT_PROFILE, profile);
    COSArray intents = new COSArray();
    intents.add(intent);
    return intents;
  }
}

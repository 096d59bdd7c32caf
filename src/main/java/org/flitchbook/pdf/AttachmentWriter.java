package org.flitchbook.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Calendar;
import java.util.List;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;

/** Puts attachments into a file, as associated files of the whole document (ISO 19005-3, 6.8). */
final class AttachmentWriter {
  private static final COSName RELATION = COSName.getPDFName("AFRelationship");
  private static final COSName ASSOCIATED = COSName.getPDFName("AF");

  private final PDDocument file;
  private final Calendar made;

  AttachmentWriter(PDDocument file, Calendar made) {
    this.file = file;
    this.made = made;
  }

  void add(List<Attachment> attachments) throws IOException {
    TreeMap<String, PDComplexFileSpecification> named = new TreeMap<>();
    for (Attachment each : attachments) {
      if (named.put(each.name(), specification(each)) != null) {
        throw new IllegalArgumentException("two attachments are called " + each.name());
      }
    }
    if (named.isEmpty()) {
      return;
    }
    PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
    tree.setNames(named);
    PDDocumentNameDictionary names = new PDDocumentNameDictionary(file.getDocumentCatalog());
    names.setEmbeddedFiles(tree);
    file.getDocumentCatalog().setNames(names);
    COSArray associated = new COSArray();
    named.values().forEach(each -> associated.add(each.getCOSObject()));
    file.getDocumentCatalog().getCOSObject().setItem(ASSOCIATED, associated);
  }

  private PDComplexFileSpecification specification(Attachment attachment) throws IOException {
    byte[] bytes = attachment.bytes();
    PDEmbeddedFile embedded =
        new PDEmbeddedFile(file, new ByteArrayInputStream(bytes), COSName.FLATE_DECODE);
    embedded.setSubtype(attachment.mediaType());
    embedded.setSize(bytes.length);
    embedded.setModDate(made);
    PDComplexFileSpecification specification = new PDComplexFileSpecification();
    specification.setFile(attachment.name());
    specification.setFileUnicode(attachment.name());
    specification.setFileDescription(attachment.description());
    specification.setEmbeddedFile(embedded);
    specification.setEmbeddedFileUnicode(embedded);
    specification.getCOSObject().setName(RELATION, attachment.relation().word);
    return specification;
  }
}

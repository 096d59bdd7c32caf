package org.flitchbook.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.UUID;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;

/**
 * What makes a file archival (PDF/A-3a, ISO 19005-3) and accessible (PDF/UA-1, ISO 14289-1): the
 * structure tree, the colour profile, the metadata; also its fields and attachments.
 */
final class Archive {
  final Destinations destinations = new Destinations();
  final PDDocument file;
  private final COSDictionary catalog;
  private final Metadata metadata;
  private final COSDictionary tree = new COSDictionary();
  final Element root = new Element("Document", tree);
  private final COSArray fields = new COSArray();

  /** What belongs to which element, by number: each number is followed by what it stands for. */
  private final COSArray parents = new COSArray();

  Archive(PDDocument file, Document document) {
    this.file = file;
    this.catalog = file.getDocumentCatalog().getCOSObject();
    this.metadata = new Metadata(document);
    file.setDocumentId(metadata.number());
    file.setDocumentInformation(metadata.information());
    file.getDocument().setVersion(1.7f);
    file.setVersion(1.7f);
    tree.setName(COSName.TYPE, "StructTreeRoot");
    tree.setItem(COSName.K, root.dictionary);
  }

  /** The next number of the parent tree: it leads to the element or elements given. */
  int number(COSBase parent) {
    int number = parents.size() / 2;
    parents.add(COSInteger.get(number));
    parents.add(parent);
    return number;
  }

  void add(PDAnnotationWidget field) {
    fields.add(field.getCOSObject());
  }

  /** Completes the catalog once all pages are there. */
  void finish(List<Attachment> attachments) throws IOException {
    file.getDocumentCatalog().setLanguage(metadata.document().words().language());
    catalog.setItem(COSName.MARK_INFO, flag("Marked"));
    catalog.setItem(COSName.VIEWER_PREFERENCES, flag("DisplayDocTitle"));
    destinations.finish(file);
    if (fields.size() > 0) {
      catalog.setItem(COSName.ACRO_FORM, dictionary(COSName.FIELDS, fields));
    }
    tree.setItem(COSName.getPDFName("ParentTree"), dictionary(COSName.NUMS, parents));
    tree.setInt(COSName.getPDFName("ParentTreeNextKey"), parents.size() / 2);
    catalog.setItem(COSName.STRUCT_TREE_ROOT, tree);
    catalog.setItem(COSName.OUTPUT_INTENTS, outputIntents());
    byte[] packet = metadata.packet().getBytes(StandardCharsets.UTF_8);
    PDMetadata stream = new PDMetadata(file, new ByteArrayInputStream(packet));
    file.getDocumentCatalog().setMetadata(stream);
    enclose(file, metadata.made(), attachments);
  }

  private static COSDictionary flag(String name) {
    COSDictionary dictionary = new COSDictionary();
    dictionary.setDirect(true);
    dictionary.setBoolean(name, true);
    return dictionary;
  }

  private static COSDictionary dictionary(COSName key, COSArray values) {
    COSDictionary dictionary = new COSDictionary();
    dictionary.setItem(key, values);
    return dictionary;
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
    return new COSArray(List.of(intent));
  }

  /** Puts files in as associated files of the whole document (ISO 19005-3, 6.8). */
  static void enclose(PDDocument file, Calendar made, List<Attachment> attachments)
      throws IOException {
    TreeMap<String, PDComplexFileSpecification> named = new TreeMap<>();
    for (Attachment each : attachments) {
      if (named.put(each.name(), specification(file, made, each)) != null) {
        throw new IllegalArgumentException("two attachments are called " + each.name());
      }
    }
    if (named.isEmpty()) {
      return;
    }
    PDEmbeddedFilesNameTreeNode embedded = new PDEmbeddedFilesNameTreeNode();
    embedded.setNames(named);
    PDDocumentNameDictionary names = new PDDocumentNameDictionary(file.getDocumentCatalog());
    names.setEmbeddedFiles(embedded);
    file.getDocumentCatalog().setNames(names);
    COSArray associated = new COSArray(List.copyOf(named.values()));
    file.getDocumentCatalog().getCOSObject().setItem(COSName.getPDFName("AF"), associated);
  }

  private static PDComplexFileSpecification specification(
      PDDocument file, Calendar made, Attachment attachment) throws IOException {
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
    String relation = attachment.relation().word;
    specification.getCOSObject().setName(COSName.getPDFName("AFRelationship"), relation);
    return specification;
  }

  /** What the file says about itself, twice: as document information and as an XMP packet. */
  private record Metadata(Document document) {
    private static final String PRODUCER = "Flitchbook";

    /** A number from the document's id, from which the file's own identifier is made. */
    long number() {
      byte[] id = document.id().getBytes(StandardCharsets.UTF_8);
      return UUID.nameUUIDFromBytes(id).getMostSignificantBits();
    }

    /** In UTC, whatever the zone of the machine. */
    Calendar made() {
      return GregorianCalendar.from(document.made().atZone(ZoneOffset.UTC));
    }

    PDDocumentInformation information() {
      PDDocumentInformation information = new PDDocumentInformation();
      Calendar made = made();
      information.setTitle(oneLine(document.title()));
      information.setSubject(oneLine(document.subject()));
      information.setProducer(PRODUCER);
      information.setCreationDate(made);
      information.setModificationDate(made);
      return information;
    }

    /**
     * The XMP packet. PDF/A knows no PDF/UA property of its own, hence the extension schema in its
     * template.
     */
    String packet() throws IOException {
      String made =
          DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss'Z'", Locale.ROOT)
              .format(document.made().atOffset(ZoneOffset.UTC));
      return new String(Pdf.resource("metadata.xmp"), StandardCharsets.UTF_8)
          .replace("{made}", made)
          .replace("{producer}", PRODUCER)
          .replace("{language}", document.words().language())
          .replace("{id}", escape(document.id()))
          .replace("{subject}", escape(document.subject()))
          .replace("{title}", escape(document.title()));
    }

    private static String oneLine(String text) {
      return Text.printable(text).replace('\n', ' ');
    }

    private static String escape(String text) {
      return oneLine(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
  }

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
}

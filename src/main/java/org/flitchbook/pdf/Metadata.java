package org.flitchbook.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.UUID;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.flitchbook.document.Document;
import org.flitchbook.document.Text;

/** What the file says about itself, twice: as document information and as an XMP packet. */
final class Metadata {
  private static final String PRODUCER = "Flitchbook";

  private final Document document;

  Metadata(Document document) {
    this.document = document;
  }

  String language() {
    return document.words().language();
  }

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

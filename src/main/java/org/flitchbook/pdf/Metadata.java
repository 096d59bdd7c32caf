package org.flitchbook.pdf;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
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
    return ByteBuffer.wrap(sha256(document.id().getBytes(StandardCharsets.UTF_8))).getLong();
  }

  static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
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

  String packet() {
    String made =
        DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss'Z'", Locale.ROOT)
            .format(document.made().atOffset(ZoneOffset.UTC));
    return TEMPLATE
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

  /** PDF/A knows no PDF/UA property of its own, hence the extension schema. */
  private static final String TEMPLATE =
      """
      <?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
      <x:xmpmeta xmlns:x="adobe:ns:meta/">
      <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
      <rdf:Description rdf:about=""
       xmlns:dc="http://purl.org/dc/elements/1.1/"
       xmlns:xmp="http://ns.adobe.com/xap/1.0/"
       xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
       xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
       xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
       xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
       xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
       xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
      <dc:format>application/pdf</dc:format>
      <dc:identifier>{id}</dc:identifier>
      <dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
      <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
      <dc:description><rdf:Alt><rdf:li xml:lang="x-default">{subject}</rdf:li></rdf:Alt></dc:description>
      <xmp:CreateDate>{made}</xmp:CreateDate>
      <xmp:ModifyDate>{made}</xmp:ModifyDate>
      <pdf:Producer>{producer}</pdf:Producer>
      <pdfaid:part>3</pdfaid:part>
      <pdfaid:conformance>A</pdfaid:conformance>
      <pdfuaid:part>1</pdfuaid:part>
      <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
      <pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
      <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
      <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
      <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
      <pdfaProperty:name>part</pdfaProperty:name>
      <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
      <pdfaProperty:category>internal</pdfaProperty:category>
      <pdfaProperty:description>Part of ISO 14289 that the file meets</pdfaProperty:description>
      </rdf:li></rdf:Seq></pdfaSchema:property>
      </rdf:li></rdf:Bag></pdfaExtension:schemas>
      </rdf:Description>
      </rdf:RDF>
      </x:xmpmeta>
      <?xpacket end="w"?>
      """;
}

package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.Deflater;

/** A PDF written by hand, object by object, as nobody's program would write it. */
final class HostilePdf {

  private static final int MB = 1 << 20;

  private final List<byte[]> objects = new ArrayList<>();

  /** With a catalog as object 1, whose pages are object 2, and whatever else it is to hold. */
  HostilePdf(String inCatalog) {
    add("<< /Type /Catalog /Pages 2 0 R " + inCatalog + " >>");
  }

  /** One page, as object 3, whose contents are object 4. */
  static HostilePdf ofPage() {
    return new HostilePdf("")
        .add("<< /Type /Pages /Kids [3 0 R] /Count 1 >>")
        .add(page("4 0 R", ""));
  }

  static String page(String contents, String resources) {
    return "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Resources << "
        + resources
        + " >> /Contents "
        + contents
        + " >>";
  }

  /** The next object, numbered from 1. */
  HostilePdf add(String object) {
    objects.add(object.getBytes(ISO_8859_1));
    return this;
  }

  HostilePdf stream(String dictionary, byte[] content) {
    ByteArrayOutputStream object = new ByteArrayOutputStream();
    String head = "<< " + dictionary + " /Length " + content.length + " >>\nstream\n";
    object.writeBytes(head.getBytes(ISO_8859_1));
    object.writeBytes(content);
    object.writeBytes("\nendstream".getBytes(ISO_8859_1));
    objects.add(object.toByteArray());
    return this;
  }

  HostilePdf stream(String content) {
    return stream("", content.getBytes(ISO_8859_1));
  }

  byte[] bytes() {
    return bytes("");
  }

  byte[] bytes(String inTrailer) {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    StringBuilder places = new StringBuilder();
    pdf.writeBytes("%PDF-1.7\n".getBytes(ISO_8859_1));
    for (int i = 0; i < objects.size(); i++) {
      places.append("%010d 00000 n \n".formatted(pdf.size()));
      pdf.writeBytes(((i + 1) + " 0 obj\n").getBytes(ISO_8859_1));
      pdf.writeBytes(objects.get(i));
      pdf.writeBytes("\nendobj\n".getBytes(ISO_8859_1));
    }
    int size = objects.size() + 1;
    String end =
        "xref\n0 %d\n0000000000 65535 f \n%strailer\n<< /Size %d /Root 1 0 R %s >>\nstartxref\n%d\n%%%%EOF\n"
            .formatted(size, places, size, inTrailer, pdf.size());
    pdf.writeBytes(end.getBytes(ISO_8859_1));
    return pdf.toByteArray();
  }

  /** One zero in a thousandth of its size: some megabytes of these unpack to gigabytes. */
  static byte[] zeros(int megabytes) {
    Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION, true);
    deflater.setInput(new byte[MB]);
    byte[] block = new byte[MB];
    int length = deflater.deflate(block, 0, MB, Deflater.FULL_FLUSH);
    deflater.end();
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    packed.write(0x78);
    packed.write(0xDA);
    for (int i = 0; i < megabytes; i++) {
      packed.write(block, 0, length);
    }
    return packed.toByteArray();
  }
}

package org.flitchbook.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * Holds each revision of a signed file against the one before. A later signature covers what was
 * changed between the two, and so both are valid all the same; the change itself must be found.
 */
final class Revisions {
  private final byte[] pdf;
  private final Look look;
  private final List<String> changes = new ArrayList<>();

  Revisions(byte[] pdf, Look look) {
    this.pdf = pdf;
    this.look = look;
  }

  /** What was changed beyond the signing of a field, in words. */
  List<String> changes() throws IOException {
    int end = look.printed();
    for (Signed each : look.signatures()) {
      compare(Arrays.copyOf(pdf, end), Arrays.copyOf(pdf, each.end()), each.field());
      end = each.end();
    }
    return changes;
  }

  private void compare(byte[] before, byte[] after, String field) throws IOException {
    try (PDDocument one = Loader.loadPDF(before);
        PDDocument other = Loader.loadPDF(after)) {
      if (Likeness.of(one, field).equals(Likeness.of(other, field))) {
        return;
      }
      int found = changes.size();
      name(pages(one), pages(other), field);
      name(attachments(one), attachments(other), field);
      if (changes.size() == found) {
        changes.add(told("something beside the pages and attachments", "changed", field));
      }
    }
  }

  private static Map<String, String> pages(PDDocument file) throws IOException {
    Map<String, String> pages = new TreeMap<>();
    int number = 0;
    for (PDPage page : file.getPages()) {
      number++;
      try (InputStream content = page.getContents()) {
        byte[] hash = Metadata.sha256(content.readAllBytes());
        pages.put("page " + number, HexFormat.of().formatHex(hash));
      }
    }
    return pages;
  }

  private static Map<String, String> attachments(PDDocument file) throws IOException {
    Map<String, String> attachments = new TreeMap<>();
    try {
      for (Attachment each : new Disclosure().of(file).values()) {
        String hash = HexFormat.of().formatHex(Metadata.sha256(each.bytes()));
        attachments.put("the attachment " + each.name(), hash);
      }
    } catch (Disclosure.Refusal refusal) {
      attachments.put("the attachments", refusal.found);
    }
    return attachments;
  }

  private void name(Map<String, String> before, Map<String, String> after, String field) {
    before.forEach(
        (name, hash) -> {
          if (!hash.equals(after.get(name))) {
            String deed = after.containsKey(name) ? "changed" : "taken out";
            changes.add(told(name, deed, field));
          }
        });
    after.keySet().stream()
        .filter(name -> !before.containsKey(name))
        .forEach(name -> changes.add(told(name, "added", field)));
  }

  private static String told(String what, String deed, String field) {
    return what + " was " + deed + " before the signature in \"" + field + "\" was made";
  }
}

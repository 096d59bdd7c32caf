package org.flitchbook.seal;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.flitchbook.message.Message;
import org.flitchbook.pdf.Attachment;

/** The parts of a file that a person knows by name, each with its hash. */
final class Parts {

  /** They lead from a page, or from a heading, to all the others. */
  private static final Set<String> TO_OTHERS = Set.of("Parent", "P", "Pg", "Obj", "Dest", "A");

  static final Message BESIDE =
      say("seal.part.other", "something beside the pages and attachments");

  private Parts() {}

  /**
   * Each page, the structure of the text, and each attachment.
   *
   * @param exempt the keys that do not count, in these very dictionaries
   */
  static Map<Message, String> of(PDDocument file, Map<COSDictionary, Set<String>> exempt)
      throws IOException {
    Map<Message, String> parts = new LinkedHashMap<>();
    for (PDPage page : PdfFile.call(() -> List.copyOf(pages(file)))) {
      Message name = say("seal.part.page", "page {0}", parts.size() + 1);
      parts.put(name, ContentHash.of(page.getCOSObject(), exempt, TO_OTHERS));
    }
    COSDictionary catalog = file.getDocumentCatalog().getCOSObject();
    COSDictionary structure = catalog.getCOSDictionary(COSName.STRUCT_TREE_ROOT);
    if (structure != null) {
      parts.put(
          say("seal.part.structure", "the structure of its text, which screen readers follow"),
          ContentHash.of(structure, exempt, TO_OTHERS));
    }
    parts.putAll(attachments(file));
    return parts;
  }

  /** The parts in which two files are not alike; "something beside" where none of them is it. */
  static List<Message> different(PDDocument one, PDDocument other) throws IOException {
    Map<Message, String> parts = of(one, Map.of());
    Map<Message, String> others = of(other, Map.of());
    Set<Message> all = new LinkedHashSet<>(parts.keySet());
    all.addAll(others.keySet());
    List<Message> different =
        all.stream().filter(part -> !Objects.equals(parts.get(part), others.get(part))).toList();
    return different.isEmpty() ? List.of(BESIDE) : different;
  }

  private static List<PDPage> pages(PDDocument file) {
    List<PDPage> pages = new ArrayList<>();
    file.getPages().forEach(pages::add);
    return pages;
  }

  private static Map<Message, String> attachments(PDDocument file) throws IOException {
    Map<Message, String> attachments = new LinkedHashMap<>();
    try {
      for (Attachment each : new AttachmentReader().read(file).values()) {
        Message part = say("seal.part.attachment", "the attachment {0}", each.name());
        attachments.put(part, ContentHash.of(each.bytes()));
      }
    } catch (AttachmentReader.Refusal refusal) {
      String why = refusal.getMessage();
      return Map.of(say("seal.part.attachments", "the attachments"), String.valueOf(why));
    }
    return attachments;
  }
}

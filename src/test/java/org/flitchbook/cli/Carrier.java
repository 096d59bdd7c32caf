package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.flitchbook.book.Book;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.evidence.RecordEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judged;
import org.flitchbook.judging.Judging;
import org.flitchbook.record.Records;

/** A record with what it carries, taken out by PDFBox. */
record Carrier(String name, List<SourceFile> files, JsonNode printed) {

  static Carrier of(Path pdf) {
    String name = pdf.getFileName().toString().replace(".pdf", "");
    List<SourceFile> files = new ArrayList<>(Pdfs.attachments(pdf));
    SourceFile findings =
        files.stream()
            .filter(file -> file.name().equals("findings/" + name + ".json"))
            .findFirst()
            .orElseThrow();
    assertArrayEquals(Tree.bytes(pdf.resolveSibling(name + ".json")), findings.bytes());
    files.remove(findings);
    JsonNode printed = Ran.json(new String(findings.bytes(), UTF_8));
    assertEquals(Main.Version.ofTheProgram(), printed.get("tool").asText());
    assertTrue(((ObjectNode) printed).remove("filesLeft").isInt(), "files left out");
    return new Carrier(name, files, printed);
  }

  /** The days of which it carries a file. */
  TreeSet<LocalDate> days() {
    TreeSet<LocalDate> days = new TreeSet<>();
    files.stream()
        .map(SourceFile::name)
        .filter(file -> file.matches("\\d{4}-\\d\\d-\\d\\d/.*"))
        .forEach(file -> days.add(LocalDate.parse(file.substring(0, 10))));
    return days;
  }

  /** What is found of the record's lots in these files alone, in the form of the record's JSON. */
  JsonNode judgedAgain() {
    LocalDate day = LocalDate.parse(printed.get("day").asText());
    Optional<String> at = Optional.of(printed.get("judgedAt").asText());
    Book book = RecordEvidence.book(printed.get("book").asText(), files);
    Judged again = Judging.day(PlannedBook.of(book), day, at);
    assertEquals(List.of(), again.faults());
    byte[] findings =
        Judging.findings(Records.json(again.day().orElseThrow()), Main.Version.ofTheProgram());
    JsonNode found = Ran.json(new String(findings, UTF_8));
    List<String> lots = printed.get("lots").findValuesAsText("lot");
    keep(found.get("lots"), lots);
    if (!name.equals("day")) {
      keep(found.get("faults"), lots);
      ((ObjectNode) found).remove("account"); // of the day as a whole; each lot has its own
    }
    return found;
  }

  private static void keep(JsonNode array, List<String> lots) {
    Iterator<JsonNode> each = array.iterator();
    while (each.hasNext()) {
      if (!lots.contains(each.next().get("lot").asText())) {
        each.remove();
      }
    }
  }

  /** As if the first of its days had not been put in. */
  Carrier withoutFirstDay() {
    String first = days().first() + "/";
    List<SourceFile> left = files.stream().filter(f -> !f.name().startsWith(first)).toList();
    return new Carrier(name, left, printed);
  }
}

package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;
import static org.flitchbook.proving.Statement.Standing.BROKEN;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.flitchbook.archive.Bundle;
import org.flitchbook.evidence.EnclosedEvidence;
import org.flitchbook.evidence.RecordEvidence;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;

/**
 * The files of one revision held against each other: each JSON against what the PDF of its name
 * carries, all of them against the bundle, and the bundle's evidence against what the PDFs carry.
 *
 * @param folder to name them by, with its slash; empty inside of a bundle that stands alone
 * @param files of the revision, by their names in its folder
 */
record DayFiles(String folder, SortedMap<String, SourceFile> files, Optional<Bundle> bundle) {

  private static final String PDF = ".pdf";
  private static final String JSON = ".json";

  /** What contradicts each other. */
  List<Statement> statements() {
    List<Statement> statements = new ArrayList<>();
    SortedSet<String> names = new TreeSet<>(files.keySet());
    bundle.ifPresent(found -> names.addAll(found.records().keySet()));
    names.remove(Bundle.FILE);
    for (String name : names) {
      if (!isInBundle(name)) {
        statements.add(
            broken(
                name,
                say(
                    "proving.files.bundle",
                    "It is not the one that the bundle of its revision holds.")));
      }
      if (name.endsWith(PDF)) {
        statements.addAll(carried(name));
      } else if (!name.endsWith(JSON) || !files.containsKey(pdf(name))) {
        statements.add(
            broken(name, say("proving.files.alone", "No PDF of its revision belongs to it.")));
      }
    }
    return statements;
  }

  private Statement broken(String name, Message message) {
    return new Statement(BROKEN, folder + name, message);
  }

  private static String pdf(String json) {
    return json.substring(0, json.length() - JSON.length()) + PDF;
  }

  /** Signatures stand behind the print that the bundle holds. */
  private boolean isInBundle(String name) {
    if (bundle.isEmpty()) {
      return true;
    }
    SourceFile here = files.get(name);
    SourceFile there = bundle.get().records().get(name);
    return here != null
        && there != null
        && (name.endsWith(PDF) ? begins(here, there) : here.content().equals(there.content()));
  }

  private static boolean begins(SourceFile file, SourceFile print) {
    int length = print.content().remaining();
    return file.content().remaining() >= length
        && Arrays.equals(Arrays.copyOf(file.bytes(), length), print.bytes());
  }

  private List<Statement> carried(String name) {
    SourceFile pdf = files.get(name);
    if (pdf == null) {
      return List.of();
    }
    Optional<EnclosedEvidence> carried = EnclosedEvidence.of(name, pdf.bytes()).enclosed();
    if (carried.isEmpty()) {
      return List.of(
          broken(name, say("proving.files.unreadable", "What it carries can't be read.")));
    }
    String base = name.substring(0, name.length() - PDF.length());
    SourceFile json = files.get(base + JSON);
    boolean isSame =
        json != null
            && carried.get().name().equals(base)
            && json.content().equals(carried.get().findings().content());
    Stream<Statement> findings =
        isSame
            ? Stream.empty()
            : Stream.of(
                broken(
                    base + JSON,
                    say("proving.files.json", "It is not the JSON that {0} carries.", name)));
    return Stream.concat(findings, others(name, carried.get().sources())).toList();
  }

  private Stream<Statement> others(String name, List<SourceFile> sources) {
    return bundle.stream()
        .flatMap(
            found ->
                sources.stream()
                    .filter(source -> !isEvidence(source, found))
                    .map(
                        source ->
                            broken(
                                name,
                                say(
                                    "proving.files.evidence",
                                    "It carries another {0} than the bundle of its revision holds.",
                                    source.name()))));
  }

  private static boolean isEvidence(SourceFile source, Bundle bundle) {
    SourceFile there = bundle.evidence().get(RecordEvidence.inBook(source.name()));
    return there != null && there.content().equals(source.content());
  }
}

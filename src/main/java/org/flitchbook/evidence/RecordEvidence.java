package org.flitchbook.evidence;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judging;
import org.flitchbook.pdf.Attachment;
import org.flitchbook.reading.FileRead;

/**
 * What a record rests on: from these files alone its lots are judged alike again.
 *
 * @param sources the plan, the days' files and the book's own templates under their paths in the
 *     book; the tool's templates under {@code tool/}
 * @param findings what was found, as JSON, under {@code findings/}
 */
public record RecordEvidence(List<SourceFile> sources, SourceFile findings) {

  static final String TOOL = "tool/";
  public static final String FINDINGS = "findings/";

  public RecordEvidence {
    sources = List.copyOf(sources);
  }

  /** The path in the book of a file that a record carries. */
  public static String inBook(String name) {
    return name.startsWith(TOOL) ? name.substring(TOOL.length()) : name;
  }

  /** All of it as a record lists it. */
  public List<FileRead> listed(List<FileRead> read) {
    Map<String, FileRead> known =
        read.stream().collect(Collectors.toMap(FileRead::name, file -> file));
    List<FileRead> all = new ArrayList<>();
    for (SourceFile file : sources) {
      String use = file.name().startsWith(TOOL) ? "template" : "own template";
      all.add(known.getOrDefault(file.name(), Judging.listed(file, use)));
    }
    all.add(Judging.listed(findings, "findings"));
    return all;
  }

  /** All of it for a print: named flat, for any folder, and described by the path. */
  public List<Attachment> attachments() {
    Set<String> names = new HashSet<>();
    List<Attachment> all = new ArrayList<>();
    sources.forEach(file -> all.add(attachment(file, Attachment.Relation.SOURCE, names)));
    all.add(attachment(findings, Attachment.Relation.DATA, names));
    return all;
  }

  private static Attachment attachment(
      SourceFile file, Attachment.Relation relation, Set<String> names) {
    // What a file system could take for a folder, or refuse.
    String name = file.name().replaceAll("[/\\\\:*?\"<>|\\p{Cntrl}]", "_");
    while (!names.add(name)) {
      name = "_" + name;
    }
    return new Attachment(name, file.name(), relation, file.content());
  }

  /** A book of nothing but such files. */
  public static Book book(String name, List<SourceFile> files) {
    SourceFile plan = SourceFile.of(BookFolder.PLAN, new byte[0]);
    NavigableMap<LocalDate, List<SourceFile>> days = new TreeMap<>();
    List<SourceFile> former = new ArrayList<>();
    List<SourceFile> templates = new ArrayList<>();
    List<String> own = new ArrayList<>();
    List<SourceFile> unread = new ArrayList<>();
    for (SourceFile file : files) {
      if (file.name().equals(BookFolder.PLAN)) {
        plan = file;
      } else if (file.name().startsWith(BookFolder.FORMER_PLANS)) {
        former.add(file);
      } else if (file.name().startsWith(TOOL)) {
        templates.add(new SourceFile(inBook(file.name()), file.content()));
      } else if (file.name().startsWith(BookFolder.TEMPLATES)) {
        templates.add(file);
        own.add(file.name());
      } else {
        Book.dayOf(file.name())
            .filter(day -> file.name().indexOf('/') == file.name().lastIndexOf('/'))
            .map(day -> days.computeIfAbsent(day, k -> new ArrayList<>()))
            .orElse(unread)
            .add(file);
      }
    }
    return new Book(Path.of(name), plan, former, days, unread, templates, own, List.of());
  }
}

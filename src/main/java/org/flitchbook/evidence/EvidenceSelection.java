package org.flitchbook.evidence;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judged;
import org.flitchbook.plan.Plan;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.FileRead;
import org.flitchbook.record.DayJudged;
import org.flitchbook.sheet.Sheet;

/**
 * Picks the files that lots rest on: their days, see {@link LotDays}, of which the earliest have
 * only the sheet of the instruments; the plan and its former versions, the rule sets that they
 * name, the classes, the rules for dirty data, the numbers of common practice, and the words of
 * their language.
 */
public final class EvidenceSelection {

  private final Book book;
  private final DayJudged judged;
  private final LotDays days;
  private final Set<String> carried;

  /**
   * The files of a book that was judged.
   *
   * @param day what was found
   */
  public EvidenceSelection(Judged judged, DayJudged day) {
    this.book = judged.book();
    this.judged = day;
    this.days = new LotDays(day, judged.read());
    this.carried =
        day.files().stream()
            .filter(file -> file.isRead() || isTable(file.name()))
            .map(FileRead::name)
            .collect(Collectors.toSet());
  }

  /** One that nobody read may hold the very readings that a limit needs, and is a fault. */
  private static boolean isTable(String name) {
    return name.toLowerCase(Locale.ROOT).endsWith(".csv");
  }

  /** What one lot rests on. */
  public List<SourceFile> of(Judgement judgement) {
    return withPlan(filesOf(judgement));
  }

  /** What all of them rest on, and the days of the faults that touch no single lot. */
  public List<SourceFile> of(Collection<Judgement> judgements) {
    Set<SourceFile> all = new TreeSet<>(Comparator.comparing(SourceFile::name));
    judgements.forEach(each -> all.addAll(filesOf(each)));
    judged.faults().stream()
        .flatMap(fault -> Book.dayOf(fault.place().file()).stream())
        .forEach(day -> all.addAll(filesOf(day)));
    return withPlan(all);
  }

  private List<SourceFile> filesOf(Judgement judgement) {
    LocalDate first = days.first(judgement);
    LocalDate checks = days.firstCheck(judgement, first);
    List<SourceFile> files = new ArrayList<>();
    for (LocalDate day : book.days().subMap(checks, true, judged.day(), true).keySet()) {
      filesOf(day).stream()
          .filter(file -> !day.isBefore(first) || isOfInstruments(file))
          .forEach(files::add);
    }
    return files;
  }

  private static boolean isOfInstruments(SourceFile file) {
    return Sheet.ofFile(file.baseName()).filter(sheet -> sheet == Sheet.INSTRUMENTS).isPresent();
  }

  private List<SourceFile> filesOf(LocalDate day) {
    return book.days().getOrDefault(day, List.of()).stream()
        .filter(file -> carried.contains(file.name()))
        .toList();
  }

  private List<SourceFile> withPlan(Collection<SourceFile> files) {
    List<SourceFile> all = new ArrayList<>(files);
    all.add(0, book.plan());
    all.addAll(1, book.formerPlans());
    for (SourceFile template : book.templates()) {
      if (isUsed(template.name())) {
        boolean own = book.ownTemplates().contains(template.name());
        String name = own ? template.name() : RecordEvidence.TOOL + template.name();
        all.add(new SourceFile(name, template.content()));
      }
    }
    return all;
  }

  private boolean isUsed(String template) {
    String name = template.substring(BookFolder.TEMPLATES.length());
    return name.equals("classes.json")
        || name.equals("doubts.json")
        || template.equals(Practice.FILE)
        || judged.versions().plans().stream().anyMatch(plan -> uses(plan, name));
  }

  /** Of the wording only the book's own: the program's is in the program. */
  private boolean uses(Plan plan, String template) {
    String wording = "words/" + plan.words().language() + ".json";
    boolean own = book.ownTemplates().contains(BookFolder.TEMPLATES + template);
    return (own && template.equals(wording))
        || plan.ruleSets().stream()
            .anyMatch(set -> template.equals("limits/" + set.name() + ".json"));
  }
}

package org.flitchbook.evidence;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.SourceFile;
import org.flitchbook.judging.Judged;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Plan;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.FileRead;
import org.flitchbook.reading.Series;
import org.flitchbook.record.DayJudged;
import org.flitchbook.sheet.Sheet;

/**
 * Picks the files that lots rest on: their days, of which the earliest have only the sheet of the
 * instruments; the plan and its former versions, the rule sets that they name, the classes, the
 * rules for dirty data, the numbers of common practice, and the words of their language.
 *
 * <p>The days begin with the first in which anything of a lot stands: an entry, one that it
 * corrects, a reading that served it, a fault. The checks of instruments go back to the last one
 * before the lot of every instrument in use since. Where an entry of an older folder corrects one
 * that is within, they begin with that older folder.
 */
public final class EvidenceSelection {

  private final Book book;
  private final DayJudged judged;
  private final List<Day> read;
  private final Set<String> carried;

  /**
   * The files of a book that was judged.
   *
   * @param day what was found
   */
  public EvidenceSelection(Judged judged, DayJudged day) {
    this.book = judged.book();
    this.judged = day;
    this.read = judged.read();
    this.carried =
        day.files().stream()
            .filter(file -> file.isRead() || Sheet.mayHoldRows(file.name()))
            .map(FileRead::name)
            .collect(Collectors.toSet());
  }

  /**
   * The record of one lot, with what it rests on.
   *
   * @param filed the day that was judged, with the place of its records
   */
  public RecordPrint lot(DayJudged filed, Judgement judgement, String tool) {
    return content(filed, withPlan(filesOf(judgement)), tool).lot(judgement);
  }

  /**
   * The report of the deviations. It carries what all lots of the day rest on, since it says of the
   * others that they have none.
   */
  public RecordPrint deviations(DayJudged filed, String tool) {
    return content(filed, of(filed.judgements()), tool).deviations();
  }

  /** The sheet of the day, with what all of its lots rest on. */
  public RecordPrint day(DayJudged filed, String tool) {
    return content(filed, of(filed.judgements()), tool).sheet();
  }

  private static RecordPrint.Content content(DayJudged day, List<SourceFile> sources, String tool) {
    Set<String> names = sources.stream().map(SourceFile::name).collect(Collectors.toSet());
    long left = day.files().stream().filter(file -> !names.contains(file.name())).count();
    return new RecordPrint.Content(day, sources, left, tool);
  }

  /**
   * What all of them rest on, the days of the faults that touch no single lot, and what nothing
   * reads.
   */
  private List<SourceFile> of(Collection<Judgement> judgements) {
    Set<SourceFile> all = new TreeSet<>(Comparator.comparing(SourceFile::name));
    judgements.forEach(each -> all.addAll(filesOf(each)));
    judged.faults().stream()
        .flatMap(fault -> Book.dayOf(fault.place().file()).stream())
        .forEach(day -> all.addAll(filesOf(day)));
    all.addAll(book.unread());
    return withPlan(all);
  }

  private List<SourceFile> filesOf(Judgement judgement) {
    LocalDate first = first(judgement);
    LocalDate checks = firstCheck(judgement, first);
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

  private LocalDate first(Judgement judgement) {
    Lot lot = judgement.lot();
    Set<LocalDate> named = new TreeSet<>(lot.filed());
    all(lot).forEach(entry -> target(entry).ifPresent(named::add));
    Stream.concat(
            judgement.faults().stream().map(fault -> fault.place().file()),
            lot.tracks().stream().flatMap(each -> files(each.track())))
        .forEach(file -> Book.dayOf(file).ifPresent(named::add));
    return withCorrections(named.stream().findFirst().orElse(judged.day()));
  }

  private static Stream<Entry> all(Lot lot) {
    return Stream.concat(
        lot.entries().stream(),
        lot.corrections().stream().flatMap(each -> Stream.of(each.replaced(), each.by())));
  }

  private static Stream<String> files(Track track) {
    return IntStream.range(0, track.size()).mapToObj(i -> track.place(i).file()).distinct();
  }

  /** The folder of the line that an entry corrects, where it corrects one. */
  private static Optional<LocalDate> target(Entry entry) {
    return entry.corrects().isEmpty()
        ? Optional.empty()
        : Book.dayOf(entry.corrects()).or(() -> Book.dayOf(entry.place().file()));
  }

  private LocalDate firstCheck(Judgement judgement, LocalDate first) {
    Instant begin = begin(judgement.lot());
    LocalDate check =
        inUse(first).stream()
            .flatMap(id -> judged.register().last(id, begin).stream())
            .flatMap(last -> Book.dayOf(last.entry().place().file()).stream())
            .min(Comparator.naturalOrder())
            .orElse(first);
    return withCorrections(check.isBefore(first) ? check : first);
  }

  /** The first time at which anything was written or read of a lot. */
  private static Instant begin(Lot lot) {
    Stream<Instant> written = lot.entries().stream().map(entry -> entry.time().earliest());
    Stream<Instant> read =
        lot.tracks().stream()
            .filter(each -> each.track().size() > 0)
            .map(each -> Instant.ofEpochMilli(each.track().earliest(0)));
    return Stream.concat(written, read).min(Comparator.naturalOrder()).orElse(Instant.MIN);
  }

  private Set<String> inUse(LocalDate from) {
    return read.stream()
        .filter(day -> !day.date().isBefore(from))
        .flatMap(
            day ->
                Stream.concat(
                    day.entries().stream().map(Entry::instrument),
                    day.series().stream().map(Series::instrument)))
        .collect(Collectors.toSet());
  }

  private LocalDate withCorrections(LocalDate first) {
    return read.stream()
        .filter(day -> day.date().isBefore(first))
        .filter(
            day ->
                day.entries().stream()
                    .anyMatch(
                        entry -> target(entry).filter(date -> !date.isBefore(first)).isPresent()))
        .map(day -> withCorrections(day.date()))
        .findFirst()
        .orElse(first);
  }
}

package org.flitchbook.evidence;

import static java.util.stream.Collectors.partitioningBy;
import static org.flitchbook.message.Message.count;
import static org.flitchbook.message.Message.say;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.UsageException;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.json.Parsed;
import org.flitchbook.judging.Judged;
import org.flitchbook.judging.Judging;
import org.flitchbook.message.Message;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfFile.Extraction;
import org.flitchbook.seal.PdfSignatures;

/**
 * What a record carries, taken out of it: from this alone its lots are judged again.
 *
 * @param name of the record, such as {@code 26047-B1}
 * @param found what was found, as the record has it
 */
public record EnclosedEvidence(
    String name, List<SourceFile> sources, SourceFile findings, Node.Obj found) {

  /** The version whose records do not name their form. */
  private static final String WITHOUT_FORM = "0.1.0";

  private static final String WORDING = BookFolder.TEMPLATES + "words/";

  /** What a record carries, or why it can't be had. */
  public record Taken(Optional<EnclosedEvidence> enclosed, List<Fault> faults) {}

  public static Taken of(String file, byte[] pdf) {
    Extraction opened = PdfFile.attachments(pdf);
    if (opened instanceof Extraction.Refused refused) {
      return faulty(file, Message.of(refused.found()), Message.of(refused.expected()));
    }
    Map<Boolean, List<SourceFile>> carried =
        ((Extraction.Attachments) opened)
            .attachments().stream()
                .map(each -> new SourceFile(each.description(), each.content()))
                .collect(partitioningBy(each -> each.name().startsWith(RecordEvidence.FINDINGS)));
    List<SourceFile> findings = carried.getOrDefault(true, List.of());
    if (findings.size() != 1) {
      return faulty(
          file,
          count(
              "evidence.findings",
              findings.size(),
              "{0} file of findings",
              "{0} files of findings"),
          say("evidence.record", "a record with its findings"));
    }
    return parsed(carried.getOrDefault(false, List.of()), findings.get(0));
  }

  private static Taken parsed(List<SourceFile> sources, SourceFile findings) {
    Parsed parsed = Json.read(findings.name(), findings.bytes());
    String name = withoutEnd(findings.name().substring(RecordEvidence.FINDINGS.length()));
    return new Taken(
        parsed.object().map(found -> new EnclosedEvidence(name, sources, findings, found)),
        parsed.faults());
  }

  private static String withoutEnd(String file) {
    return file.replaceAll("\\.json$", "");
  }

  private static Taken faulty(String file, Message found, Message expected) {
    return new Taken(
        Optional.empty(), List.of(Fault.broken("evidence", Place.of(file), found, expected)));
  }

  public String text(String key) {
    return found.text(key).orElse("");
  }

  /** The day that it is a record of. */
  private Optional<LocalDate> day() {
    try {
      return Optional.of(LocalDate.parse(text("day")));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** The codes of the lots that it is about. */
  public List<String> lots() {
    return found.objects("lots").stream().flatMap(lot -> lot.text("lot").stream()).toList();
  }

  /** The verdict on a lot that it states, as the word of its JSON; empty where it states none. */
  public String verdict(String lot) {
    return found.objects("lots").stream()
        .filter(each -> each.text("lot").equals(Optional.of(lot)))
        .flatMap(each -> each.text("verdict").stream())
        .findFirst()
        .orElse("");
  }

  /** The version of the program that made it; empty where it states none. */
  public String madeBy() {
    return text(Judging.TOOL);
  }

  /** Whether it has the form of the version that it says made it: all but the first name theirs. */
  public boolean isInFormOfItsVersion() {
    return found.members().containsKey(Records.FORM) != madeBy().equals(WITHOUT_FORM);
  }

  /**
   * The book that it is judged again from: its own files, and the wording of the version that made
   * it, where this is that version. Otherwise with what the earlier version had in its code, and
   * without a wording of the book's own, since no sentence is compared.
   *
   * @param tool this version
   */
  public Book book(String tool) {
    List<SourceFile> files = madeBy().equals(tool) ? withWording() : ofEarlierVersion();
    return RecordEvidence.book(text("book"), files);
  }

  private List<SourceFile> withWording() {
    Set<String> own = sources.stream().map(SourceFile::name).collect(Collectors.toSet());
    Stream<SourceFile> ofTool =
        BookFolder.toolTemplates().stream()
            .filter(file -> isWording(file) && !own.contains(file.name()))
            .map(file -> new SourceFile(RecordEvidence.TOOL + file.name(), file.content()));
    return Stream.concat(sources.stream(), ofTool).toList();
  }

  private List<SourceFile> ofEarlierVersion() {
    Stream<SourceFile> others = sources.stream().filter(file -> !isWording(file));
    Stream<SourceFile> wording =
        sources.stream().filter(EnclosedEvidence::isWording).map(EnclosedEvidence::withoutTexts);
    return EarlierTemplates.filledIn(madeBy(), Stream.concat(others, wording).toList());
  }

  private static boolean isWording(SourceFile file) {
    return file.name().startsWith(WORDING) || file.name().startsWith(RecordEvidence.TOOL + WORDING);
  }

  /** A language that only the book had is printed in English here. */
  private static SourceFile withoutTexts(SourceFile wording) {
    String language = withoutEnd(wording.baseName());
    return SourceFile.of(WORDING + language + ".json", Json.write(empty(language)));
  }

  private static Map<String, Object> empty(String language) {
    return Map.of("flitchbook", 1, "language", language, "made", "", "by", "", "words", Map.of());
  }

  /**
   * Judges the day again as of the moment that the record states; a fault where it states none.
   *
   * @param tool this version of the program
   */
  public Judged judgedAgain(String tool) {
    Optional<LocalDate> day = day();
    if (day.isEmpty()) {
      return refused(tool, "day", say("evidence.day", "the day of the record"));
    }
    try {
      return Judging.day(PlannedBook.of(book(tool)), day.get(), Optional.of(text("judgedAt")));
    } catch (UsageException noMoment) {
      return refused(tool, "judgedAt", say("evidence.moment", "the moment judged"));
    }
  }

  /**
   * How the record's pages, and all else that it holds, stand to a print made again from what it
   * carries. Empty where no print can be made again: another version of the program made it, it is
   * named like no record of its day, or it does not say where it was filed.
   *
   * @param judged what {@link #judgedAgain} found
   * @param tool this version of the program
   */
  public Optional<PdfFile.Likeness> likeness(
      byte[] pdf, PdfSignatures look, DayJudged judged, String tool) {
    return Records.filing(found)
        .filter(filing -> madeBy().equals(tool))
        .flatMap(filing -> printed(judged.filed(filing), tool))
        .map(again -> PdfFile.likeness(pdf, look, again.pdf().bytes()));
  }

  private Optional<RecordPrint> printed(DayJudged filed, String tool) {
    int left = found.count(RecordPrint.LEFT).orElse(0);
    RecordPrint.Content content = new RecordPrint.Content(filed, sources, left, tool);
    return switch (name) {
      case RecordPrint.DAY -> Optional.of(content.sheet());
      case RecordPrint.DEVIATIONS -> Optional.of(content.deviations());
      default ->
          filed.judgements().stream()
              .filter(each -> each.lot().code().equals(name))
              .findFirst()
              .map(content::lot);
    };
  }

  private Judged refused(String tool, String key, Message expected) {
    Place place = Place.of(findings.name()).column(key);
    Fault fault = Fault.broken("evidence", place, Message.of("\"" + text(key) + "\""), expected);
    return new Judged(book(tool), List.of(), Optional.empty(), List.of(fault));
  }
}

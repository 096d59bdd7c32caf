package org.flitchbook.judging;

import static org.flitchbook.message.Message.say;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.account.Accounts;
import org.flitchbook.archive.LedgerFile;
import org.flitchbook.archive.SkippedDays;
import org.flitchbook.book.Book;
import org.flitchbook.book.BookFolder;
import org.flitchbook.book.PlannedBook;
import org.flitchbook.check.Checks;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.doubt.Doubts;
import org.flitchbook.doubt.Rule;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.json.Json;
import org.flitchbook.lot.Lots;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Succession;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.FileRead;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.DayJudged.Filing;
import org.flitchbook.record.Records;

/** Reads a book up to a day and judges the lots of that day, or all lots of the book. */
public final class Judging {

  private static final String RULES = BookFolder.TEMPLATES + "doubts.json";

  /** The columns of what is printed on a terminal. */
  public static final int WIDTH = 110;

  /** The key under which the findings name the version of the program that made them. */
  public static final String TOOL = "tool";

  /** What a person who waits is told. */
  public static final Message PROGRESS = say("judging.progress", "judging");

  private final PlannedBook planned;
  private final Book book;
  private final When when;
  private final List<Fault> faults;

  private Judging(PlannedBook planned, When when) {
    this.planned = planned;
    this.book = planned.book();
    this.when = when;
    this.faults = new ArrayList<>(planned.faults());
  }

  /**
   * What is judged.
   *
   * @param at the moment judged; empty: the later of the day's end and the last time read
   */
  private record When(LocalDate day, Optional<String> at, boolean wholeBook) {}

  /**
   * Judges a day, or all lots of a book at its last day. Writes nothing.
   *
   * @param at the moment judged; empty: the later of the day's end and the last time read
   * @throws UsageException where there is no such book or day
   */
  public static JobResult check(Session session, Path where, Optional<String> at) {
    PlannedBook book = BookFolder.read(session, where);
    Optional<LocalDate> day = BookFolder.dayOf(where);
    session.progress(PROGRESS);
    When when = new When(day.orElseGet(book.book()::lastDay), at, day.isEmpty());
    Judging judging = new Judging(book, when);
    return judging.judge().result(found -> judging.checked(session, found));
  }

  /** Of a whole book with the days that were skipped; of a day what its sheet would have. */
  private JobResult checked(Session session, DayJudged found) {
    Map<String, Object> json = new LinkedHashMap<>(Records.json(found));
    String lines = "";
    if (when.wholeBook()) {
      SkippedDays days = SkippedDays.before(when.day(), book, LedgerFile.read(book.folder()));
      json.put("days", days.json());
      lines = session.lines(days.lines());
    }
    return new JobResult(
        status(found),
        lines.isEmpty() ? summary(found) : summary(found) + "\n" + lines,
        new String(findings(json, session.tool()), StandardCharsets.UTF_8),
        List.of());
  }

  /** The days of running steps on which nothing is on file, of all lots of a book. */
  public static List<Fault> emptyDays(PlannedBook book) {
    return book.book().days().isEmpty()
        ? List.of()
        : new Judging(book, new When(book.book().lastDay(), Optional.empty(), true)).emptyDays();
  }

  /**
   * Judges the lots of a day.
   *
   * @param at the moment judged; empty: the later of the day's end and the last time read
   * @throws UsageException where it is no time, or one before the day
   */
  public static Judged day(PlannedBook book, LocalDate day, Optional<String> at) {
    return new Judging(book, new When(day, at, false)).judge();
  }

  /** Judges all lots of a book as of its last day. */
  public static Judged book(PlannedBook book) {
    return new Judging(book, new When(book.book().lastDay(), Optional.empty(), true)).judge();
  }

  /** A lot by its limits, and once more where a row of it was used by none of them. */
  public static Judgement judge(Plan plan, Doubts.Result examined, Instant moment) {
    Judgement judged = Checks.judge(plan, examined.lot(), examined.faults(), moment);
    Doubts.Result all = examined.unused().apply(judged.usedRows());
    return all.faults().equals(examined.faults())
        ? judged
        : Checks.judge(plan, all.lot(), all.faults(), moment);
  }

  /** What was found, and which version of the program found it. */
  public static byte[] findings(Map<String, Object> found, String tool) {
    Map<String, Object> json = new LinkedHashMap<>(found);
    json.put(TOOL, tool);
    return Json.write(json);
  }

  /** The day for a terminal. */
  public static String summary(DayJudged day) {
    return printed(Records.summary(day));
  }

  /** With plain spaces once the lines are broken, so that the words can be searched for. */
  public static String printed(Document document) {
    return document.toText(WIDTH).replace('\u00a0', ' ');
  }

  public static ExitStatus status(DayJudged day) {
    return day.isAmiss() ? ExitStatus.AMISS : ExitStatus.WELL;
  }

  private Judged judge() {
    List<Rule> rules = rules();
    List<Day> days = hand().map(this::read).orElse(List.of());
    days.forEach(each -> each.faults().stream().filter(Judging::isBroken).forEach(faults::add));
    Optional<DayJudged> day =
        faults.stream().anyMatch(Judging::isBroken)
            ? Optional.empty()
            : planned.versions().map(known -> judge(known, rules, days));
    return new Judged(book, days, day, faults);
  }

  private List<Fault> emptyDays() {
    return planned
        .versions()
        .map(
            known -> {
              List<Day> days = hand().map(this::read).orElse(List.of());
              Instant moment = moment(known.now(), days, when.day());
              return new LotJudging(known, List.of(), days, moment).emptyDays();
            })
        .orElse(List.of());
  }

  /** Without a plan too, so that the files that can't be parsed are found beside what is wrong. */
  private Optional<Hand> hand() {
    return planned
        .versions()
        .map(Succession::now)
        .map(known -> new Hand(zone(known), known.establishment().decimalMark(), known.practice()))
        .or(
            () ->
                Practice.read(book.templates())
                    .value()
                    .map(practice -> new Hand(ZoneId.of("UTC"), '.', practice)));
  }

  private List<Day> read(Hand hand) {
    return book.days().headMap(when.day(), true).entrySet().stream()
        .map(each -> Readings.read(each.getKey(), each.getValue(), hand))
        .toList();
  }

  private static boolean isBroken(Fault fault) {
    return fault.is(Severity.BROKEN);
  }

  private static ZoneId zone(Plan plan) {
    return plan.establishment().zone();
  }

  private List<Rule> rules() {
    Message found = say("judging.no-rules", "no such file");
    Message expected = say("judging.rules", "the rules' numbers");
    Fault missing = Fault.broken("template missing", Place.of(RULES), found, expected);
    Doubts.Rules rules =
        book.templates().stream()
            .filter(each -> each.name().equals(RULES))
            .findFirst()
            .map(Doubts::rules)
            .orElse(new Doubts.Rules(List.of(), List.of(missing)));
    faults.addAll(rules.faults());
    return rules.all();
  }

  private DayJudged judge(Succession versions, List<Rule> rules, List<Day> days) {
    Plan plan = versions.now();
    Instant moment =
        when.at()
            .map(text -> stated(text, plan, when.day()))
            .orElseGet(() -> moment(plan, days, when.day()));
    LotJudging lots = new LotJudging(versions, rules, days, moment);
    return new DayJudged(
        book.name(),
        when.day(),
        moment,
        versions,
        lots.assembled().register(),
        when.wholeBook() ? lots.judgements() : lots.judgements(when.day()),
        Stream.concat(book.asks().stream(), lots.assembled().faults().stream()).toList(),
        files(days),
        Filing.OUTSIDE,
        new Accounts(
            plan, lots.assembled().register(), when.day(), moment, Doubts.lateAfter(rules)));
  }

  private List<FileRead> files(List<Day> days) {
    List<FileRead> files = new ArrayList<>();
    files.add(listed(book.plan(), "plan"));
    book.formerPlans().forEach(file -> files.add(listed(file, "former plan")));
    days.forEach(day -> files.addAll(day.files()));
    return files;
  }

  /** A file as a record lists it of which the rows are not counted. */
  public static FileRead listed(SourceFile file, String use) {
    return new FileRead(file.name(), use, file.content().remaining(), file.sha256(), 0, 0);
  }

  private static Instant stated(String text, Plan plan, LocalDate day) {
    Instant moment =
        Readings.time(text, zone(plan))
            .orElseThrow(
                () ->
                    new UsageException(
                        "judging.no-time",
                        "--at \"{0}\" is no time; write one such as {1}T18:00",
                        text,
                        day));
    if (moment.isBefore(day.atStartOfDay(zone(plan)).toInstant())) {
      throw new UsageException(
          "judging.too-early",
          "--at {0} lies before {1}, the day to be judged; write one such as {1}T18:00",
          text,
          day);
    }
    return moment;
  }

  private static Instant moment(Plan plan, List<Day> days, LocalDate day) {
    Instant end = day.plusDays(1).atStartOfDay(zone(plan)).toInstant();
    return Stream.concat(Stream.of(end), Lots.times(days))
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }
}

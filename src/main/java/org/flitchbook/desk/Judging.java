package org.flitchbook.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.flitchbook.account.Accounts;
import org.flitchbook.doubt.Doubts;
import org.flitchbook.doubt.Rule;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Language;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.PlanRead;
import org.flitchbook.plan.Plans;
import org.flitchbook.plan.Succession;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Day;
import org.flitchbook.reading.FileRead;
import org.flitchbook.reading.Hand;
import org.flitchbook.reading.Readings;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Filing;
import org.flitchbook.words.Words;

/** Reads a book up to a day and judges the lots of that day. */
final class Judging {

  private static final String RULES = "templates/doubts.json";

  private final Book book;
  private final List<Fault> faults;
  private List<Day> days = List.of();

  /**
   * @param faults what was wrong with the files on the disk
   */
  Judging(Book book, List<Fault> faults) {
    this.book = book;
    this.faults = new ArrayList<>(faults);
  }

  List<Fault> faults() {
    return faults;
  }

  /** What was read, once it is judged. */
  List<Day> days() {
    return days;
  }

  /** The plan of today; empty where there is a fault in it or in what it draws on. */
  Optional<Plan> plan() {
    return versions().map(Succession::now);
  }

  /** The language of the book that a file lies in; English where it lies in none that is sound. */
  static Language languageAround(Path file) {
    Path folder = file.toAbsolutePath().normalize().getParent();
    while (folder != null && !Files.exists(folder.resolve(Shelf.PLAN))) {
      folder = folder.getParent();
    }
    if (folder == null) {
      return Language.ENGLISH;
    }
    Judging judging = new Judging(Shelf.withoutDays(folder, new ArrayList<>()), List.of());
    return judging.plan().map(plan -> (Language) plan.words()).orElse(Language.ENGLISH);
  }

  private Optional<Succession> versions() {
    Optional<Plan> now = read(book.plan());
    Optional<Words> words = now.map(Plan::words);
    List<Plan> former =
        book.formerPlans().stream().flatMap(file -> former(file, words).stream()).toList();
    return now.map(plan -> Succession.of(plan, former, faults));
  }

  private Optional<Plan> former(SourceFile file, Optional<Words> words) {
    return words
        .map(told -> noted(Plans.former(file, book.templates(), book.ownTemplates(), told)))
        .orElseGet(() -> read(file));
  }

  private Optional<Plan> read(SourceFile file) {
    return noted(Plans.read(file, book.templates(), book.ownTemplates()));
  }

  private Optional<Plan> noted(PlanRead read) {
    faults.addAll(read.faults());
    return read.plan();
  }

  /**
   * Judges the lots of a day, or all lots of the book.
   *
   * @param at the moment judged; empty: the later of the day's end and the last time read
   * @return empty where a file can't be parsed; {@link #faults} says which and why
   */
  Optional<DayJudged> judge(LocalDate day, Optional<String> at, boolean wholeBook) {
    Optional<Succession> versions = versions();
    List<Rule> rules = rules();
    days = hand(versions).map(hand -> read(day, hand)).orElse(List.of());
    days.forEach(each -> each.faults().stream().filter(Judging::isBroken).forEach(faults::add));
    return faults.stream().anyMatch(Judging::isBroken)
        ? Optional.empty()
        : versions.map(known -> judge(known, rules, days, new When(day, at, wholeBook)));
  }

  /** Without a plan too, so that the files that can't be parsed are found beside what is wrong. */
  private Optional<Hand> hand(Optional<Succession> versions) {
    return versions
        .map(Succession::now)
        .map(known -> new Hand(zone(known), known.establishment().decimalMark(), known.practice()))
        .or(
            () ->
                Practice.read(book.templates(), new ArrayList<>())
                    .map(practice -> new Hand(ZoneId.of("UTC"), '.', practice)));
  }

  private List<Day> read(LocalDate day, Hand hand) {
    return book.days().headMap(day, true).entrySet().stream()
        .map(each -> Readings.read(each.getKey(), each.getValue(), hand))
        .toList();
  }

  private record When(LocalDate day, Optional<String> at, boolean wholeBook) {}

  private static boolean isBroken(Fault fault) {
    return fault.is(Severity.BROKEN);
  }

  private static ZoneId zone(Plan plan) {
    return plan.establishment().zone();
  }

  private List<Rule> rules() {
    Optional<SourceFile> file =
        book.templates().stream().filter(each -> each.name().equals(RULES)).findFirst();
    if (file.isEmpty()) {
      faults.add(
          Fault.broken("template missing", Place.of(RULES), "no such file", "the rules' numbers"));
    }
    Optional<Doubts.Rules> rules = file.map(Doubts::rules);
    rules.ifPresent(read -> faults.addAll(read.faults()));
    return rules.map(Doubts.Rules::all).orElse(List.of());
  }

  private DayJudged judge(Succession versions, List<Rule> rules, List<Day> days, When when) {
    Plan plan = versions.now();
    Instant moment =
        when.at()
            .map(text -> stated(text, plan, when.day()))
            .orElseGet(() -> moment(plan, days, when.day()));
    LotJudging lots = new LotJudging(versions, rules, days, moment);
    Predicate<Lot> ofDay = lot -> when.wholeBook() || lots.isOfDay(lot, when.day());
    return new DayJudged(
        book.name(),
        when.day(),
        moment,
        versions,
        lots.assembled().register(),
        lots.judgements(ofDay),
        lots.assembled().faults(),
        files(days),
        Filing.OUTSIDE,
        new Accounts(
            plan, lots.assembled().register(), when.day(), moment, Doubts.lateAfter(rules)));
  }

  private List<FileRead> files(List<Day> days) {
    List<FileRead> files = new ArrayList<>();
    files.add(plan(book.plan(), "plan"));
    book.formerPlans().forEach(file -> files.add(plan(file, "former plan")));
    days.forEach(day -> files.addAll(day.files()));
    return files;
  }

  private static FileRead plan(SourceFile file, String use) {
    return new FileRead(file.name(), use, file.content().remaining(), file.sha256(), 0, 0);
  }

  private static Instant stated(String text, Plan plan, LocalDate day) {
    String example = "; write one such as " + day + "T18:00";
    Instant moment =
        Readings.time(text, zone(plan))
            .orElseThrow(() -> new Misuse("--at \"" + text + "\" is no time" + example));
    if (moment.isBefore(day.atStartOfDay(zone(plan)).toInstant())) {
      throw new Misuse("--at " + text + " lies before " + day + ", the day to be judged" + example);
    }
    return moment;
  }

  private static Instant moment(Plan plan, List<Day> days, LocalDate day) {
    Instant end = day.plusDays(1).atStartOfDay(zone(plan)).toInstant();
    Instant last = end;
    for (Day each : days) {
      for (Instant time : each.lastTimes()) {
        last = time.isAfter(last) ? time : last;
      }
    }
    return last;
  }
}

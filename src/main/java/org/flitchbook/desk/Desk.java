package org.flitchbook.desk;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.look.Look;
import org.flitchbook.look.LookResult;
import org.flitchbook.plan.Plan;
import org.flitchbook.record.DayJudged;
import org.flitchbook.record.Records;
import org.flitchbook.record.Traced;
import org.flitchbook.sign.Algorithm;

/** The jobs that people come for: each takes a folder and gives an answer. */
public final class Desk {

  static final int WIDTH = 110;

  private final Caller caller;

  /** Opens the desk for somebody. */
  public Desk(Caller caller) {
    this.caller = caller;
  }

  /**
   * Judges a day, or all lots of a book at its last day. Writes nothing.
   *
   * @param at the moment judged; empty: the later of the day's end and the last time read
   * @throws Misuse where there is no such book or day
   */
  public Answer check(Path where, Optional<String> at) {
    List<Fault> faults = new ArrayList<>();
    Book book = take(where, faults);
    Optional<LocalDate> day = Shelf.dayOf(where);
    Judging judging = new Judging(book, faults);
    caller.progress().accept("judging");
    return judging
        .judge(day.orElseGet(() -> lastDay(book)), at, day.isEmpty())
        .map(this::judged)
        .orElseGet(() -> Answer.broken(judging.faults()));
  }

  /**
   * Judges a day again from the files that a record carries and from nothing else; the disk is not
   * looked at.
   *
   * @param book the name of the book
   * @param files under the paths that {@link Evidence} gives them
   * @param at the moment judged, as the record's findings have it
   */
  public Answer judgeAgain(String book, List<SourceFile> files, LocalDate day, String at) {
    Judging judging = new Judging(Evidence.book(book, files), List.of());
    return judging
        .judge(day, Optional.of(at), false)
        .map(this::judged)
        .orElseGet(() -> Answer.broken(judging.faults()));
  }

  /**
   * Looks at a probe log, and proposes how to read it. The file may lie anywhere.
   *
   * @throws Misuse where there is no such file
   */
  public Answer look(Path file) {
    caller.progress().accept("reading");
    List<Fault> faults = new ArrayList<>();
    Optional<LookResult> seen =
        Shelf.file(file, faults).map(log -> Look.at(log, Judging.languageAround(file)));
    seen.ifPresent(each -> faults.addAll(each.faults()));
    return seen.filter(each -> faults.isEmpty())
        .map(each -> new Answer(Status.WELL, each.text(), json(each), List.of(), List.of()))
        .orElseGet(() -> Answer.broken(faults));
  }

  private static String json(LookResult seen) {
    return new String(Json.write(seen.tree()), StandardCharsets.UTF_8);
  }

  private Book take(Path where, List<Fault> faults) {
    caller.progress().accept("reading");
    return Shelf.take(Shelf.bookOf(where), faults);
  }

  private static LocalDate lastDay(Book book) {
    if (book.days().isEmpty()) {
      throw new Misuse(book.folder() + " has no day's folder yet");
    }
    return book.days().lastKey();
  }

  private Answer judged(DayJudged day) {
    return new Answer(
        status(day),
        summary(day),
        new String(Printing.found(Records.json(day), caller.tool()), StandardCharsets.UTF_8),
        List.of(),
        List.of());
  }

  /** With plain spaces once the lines are broken, so that the words can be searched for. */
  private static String summary(DayJudged day) {
    return Records.summary(day).toText(WIDTH).replace('\u00a0', ' ');
  }

  private static Status status(DayJudged day) {
    return day.isAmiss() ? Status.AMISS : Status.WELL;
  }

  /**
   * Judges a day and writes its records: into the book, and its ledger, or elsewhere.
   *
   * @throws Misuse where there is no such day, where it can't be written, or where a day that was
   *     closed has changed and nobody says why
   */
  public Answer close(Path where, Order order) {
    LocalDate day =
        Shelf.dayOf(where)
            .orElseThrow(() -> new Misuse(where + " is a book; name one of its days' folders"));
    Path folder = Shelf.bookOf(where);
    if (order.out().isPresent()) {
      return closeOutside(folder, day, order, order.out().get());
    }
    try (LedgerFile ledger = LedgerFile.hold(folder, caller.progress())) {
      List<Fault> broken = ledger.ledger().faults();
      return broken.isEmpty()
          ? judge(
              folder,
              day,
              order,
              (print, judged) -> new Closing(print, judged, ledger, order, caller).close())
          : Answer.broken(broken);
    }
  }

  private Answer closeOutside(Path folder, LocalDate day, Order order, Path out) {
    if (order.by().isPresent() || order.reason().isPresent()) {
      throw new Misuse("--as and --reason are for the ledger, which --out leaves untouched");
    }
    refuseInside(out, folder);
    return judge(folder, day, order, (print, judged) -> printed(print, judged, out));
  }

  private static Answer printed(Printing print, DayJudged day, Path out) {
    Map<String, byte[]> files = print.of(day);
    return closed(day, List.of(), new Cabinet(out).file(day.day(), files), List.of());
  }

  private Answer judge(
      Path folder, LocalDate day, Order order, BiFunction<Printing, DayJudged, Answer> next) {
    List<Fault> faults = new ArrayList<>();
    Book book = take(folder, faults);
    Judging judging = new Judging(book, faults);
    caller.progress().accept("judging");
    return judging
        .judge(day, order.at(), false)
        .map(judged -> next.apply(printing(book, judged, judging), judged))
        .orElseGet(() -> Answer.broken(judging.faults()));
  }

  private Printing printing(Book book, DayJudged judged, Judging judging) {
    return new Printing(book, new Grounds(book, judged, judging.days()), caller);
  }

  /** Records among the book's own files would be taken for its input the next time. */
  private static void refuseInside(Path out, Path book) {
    if (out.toAbsolutePath().normalize().startsWith(book)) {
      throw new Misuse(
          "--out "
              + out
              + " lies in the book; leave --out away to write to the book's records, or name a"
              + " folder outside of the book");
    }
  }

  static Answer closed(DayJudged day, List<String> notes, Cabinet.Filed filed, List<Fault> damage) {
    Status status = damage.isEmpty() ? status(day) : Status.AMISS;
    StringBuilder text = new StringBuilder(summary(day)).append('\n');
    notes.forEach(note -> text.append(note).append('\n'));
    return new Answer(status, text + filed.told(), "", damage, filed.written());
  }

  /**
   * Reads a plan with all that it draws on, and says what its products' classes ask for beyond it.
   *
   * @throws Misuse where there is no plan
   */
  public Answer checkPlan(Path where) {
    List<Fault> faults = new ArrayList<>();
    Judging judging = new Judging(take(where, faults), faults);
    Optional<Plan> plan = judging.plan();
    return plan.filter(known -> judging.faults().isEmpty())
        .map(PlanTold::of)
        .orElseGet(() -> Answer.broken(judging.faults()));
  }

  /**
   * Follows a code through all lots of a book, as of its last day.
   *
   * @param code of a lot, an ingredient's or a supplier's lot, an instrument or a customer
   * @throws Misuse where there is no such book, or it doesn't know the code
   */
  public Answer trace(Path where, String code) {
    List<Fault> faults = new ArrayList<>();
    Book book = take(where, faults);
    Judging judging = new Judging(book, faults);
    caller.progress().accept("judging");
    return judging
        .judge(lastDay(book), Optional.empty(), true)
        .map(day -> traced(day, code))
        .orElseGet(() -> Answer.broken(judging.faults()));
  }

  private static Answer traced(DayJudged day, String code) {
    Traced traced =
        Records.trace(day, code)
            .orElseThrow(
                () ->
                    new Misuse(
                        "\""
                            + code
                            + "\" is no lot, no ingredient's or supplier's lot, no instrument and"
                            + " no customer of "
                            + day.book()));
    String text = traced.document().toText(WIDTH).replace('\u00a0', ' ');
    String json = new String(Json.write(traced.json()), StandardCharsets.UTF_8);
    return new Answer(Status.WELL, text, json, List.of(), List.of());
  }

  /**
   * Makes a key for a person of the plan.
   *
   * @param rsa an RSA key in place of one on an elliptic curve
   * @param enter enter it in the plan's file
   * @throws Misuse where the plan doesn't know the person, or there is a key already
   */
  public Answer newKey(KeyOrder order, boolean rsa, boolean enter, Passphrase passphrase) {
    Algorithm algorithm = rsa ? Algorithm.RSA_3072 : Algorithm.EC_P256;
    return Keys.of(order, caller, keys -> keys.make(algorithm, enter, passphrase));
  }

  /**
   * Shows a person's key, without its secret.
   *
   * @throws Misuse where there is none
   */
  public Answer showKey(KeyOrder order) {
    return Keys.of(order, caller, Keys::show);
  }

  /**
   * Marks a person's key as retired in the plan's file.
   *
   * @param on the last day on which it counts; empty: today
   * @throws Misuse where the plan has no key of that person in use
   */
  public Answer retireKey(KeyOrder order, Optional<String> on) {
    return Keys.of(order, caller, keys -> keys.retire(on));
  }

  /**
   * Signs a record, and tells the ledger of the book that it lies in.
   *
   * @throws Misuse where the person may not, where the record was changed after it was printed, or
   *     where no time stamp can be had
   */
  public Answer sign(SignOrder order, Passphrase passphrase) {
    return new Signer(order, passphrase, caller).sign();
  }

  /**
   * Proves a record or a book: signatures, changes, the ledger, and for a record the verdicts
   * judged again from what it carries. Writes nothing.
   *
   * @throws Misuse where there is no such file or folder
   */
  public Answer prove(ProveOrder order) {
    return new Proving(order, caller).prove();
  }
}

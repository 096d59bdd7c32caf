package org.flitchbook.record;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.reading.FileRead;

/** Turns what was judged into documents and into JSON. */
public final class Records {

  /** The key under which a record names the version of its form. */
  public static final String FORM = "form";

  private Records() {}

  /** The whole day as a tree for JSON, with what is added up about its lots together. */
  public static Map<String, Object> json(DayJudged day) {
    Map<String, Object> tree = JsonForm.of(day, day.judgements(), day.allFaults());
    tree.put("account", day.jsonTree().of(day.accounts().day(day.judgements())));
    return tree;
  }

  /** One lot as a tree for JSON, in the same form. */
  public static Map<String, Object> json(DayJudged day, Judgement judgement) {
    return JsonForm.of(day, List.of(judgement), judgement.faults());
  }

  /** The lots with deviations, in the same form. */
  public static Map<String, Object> deviationsJson(DayJudged day) {
    List<Judgement> held = day.held();
    return JsonForm.of(day, held, held.stream().flatMap(each -> each.faults().stream()).toList());
  }

  /**
   * The record of one lot.
   *
   * @param carried the files that the record will carry
   */
  public static Document batch(DayJudged day, Judgement judgement, List<FileRead> carried) {
    return new BatchRecord(day, judgement, carried).document();
  }

  /** The report of the day's deviations. */
  public static Document deviations(DayJudged day, List<FileRead> carried) {
    return new DeviationReport(day).document(carried);
  }

  /** The sheet of the day. */
  public static Document day(DayJudged day, List<FileRead> carried) {
    return new DaySheet(day).document(carried);
  }

  /** The day in a few lines for a terminal: what is wrong, and what the plan says to do. */
  public static Document summary(DayJudged day) {
    return new DaySheet(day).summary();
  }

  /**
   * Everything that a code touches: a lot, an ingredient's or a supplier's lot, an instrument, a
   * customer.
   *
   * @param day all lots of a book
   * @return empty where the book doesn't know the code
   */
  public static Optional<Traced> trace(DayJudged day, String code) {
    return day.accounts()
        .trace(day.judgements(), code)
        .map(trace -> new TraceReport(day, trace))
        .map(report -> new Traced(report.document(), report.json()));
  }
}

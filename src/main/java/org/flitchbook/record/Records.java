package org.flitchbook.record;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Document;
import org.flitchbook.json.Node;

/** Turns what was judged into documents and into JSON. */
public final class Records {

  /** The key under which a record names the version of its form. */
  public static final String FORM = "form";

  /** What the name of a reviewer's box begins with whose lot is not to be released. */
  public static final String NOT_RELEASED = "not-released";

  private Records() {}

  /** What was found of a code: a document for people, and the same as a tree for JSON. */
  public record Traced(Document document, Map<String, Object> json) {}

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

  /** Where a record was filed, as its JSON states it; empty where what stands there can't be so. */
  public static Optional<DayJudged.Filing> filing(Node.Obj found) {
    return FilingForm.read(found);
  }

  /** The record of one lot, with the files that it will carry. */
  public static Document batch(DayJudged day, Judgement judgement, Carried carried) {
    return new BatchRecord(day, judgement).document(carried);
  }

  /** The report of the day's deviations. */
  public static Document deviations(DayJudged day, Carried carried) {
    return new DayRecords(day).deviations(carried);
  }

  /** The sheet of the day. */
  public static Document day(DayJudged day, Carried carried) {
    return new DayRecords(day).sheet(carried);
  }

  /** The day in a few lines for a terminal: what is wrong, and what the plan says to do. */
  public static Document summary(DayJudged day) {
    return new DayRecords(day).summary();
  }

  /** All that a code touches in a book with these lots; empty where nothing there knows it. */
  public static Optional<Traced> trace(DayJudged day, String code) {
    return day.accounts()
        .trace(day.judgements(), code)
        .map(trace -> new TraceReport(day, trace))
        .map(report -> new Traced(report.document(), report.json()));
  }
}

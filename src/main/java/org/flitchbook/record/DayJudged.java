package org.flitchbook.record;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.account.Accounts;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.Fault;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.Succession;
import org.flitchbook.reading.FileRead;

/**
 * All that was judged for one day.
 *
 * @param book the name of the book's folder
 * @param moment the moment judged
 * @param versions of the plan; that of today judged every lot, those of before what began under
 *     them
 * @param judgements of the lots of the day, by their codes
 * @param faults those that touch no single lot
 * @param files every file read, of all days, with what became of it
 * @param filing where the records go
 * @param accounts of its lots
 */
public record DayJudged(
    String book,
    LocalDate day,
    Instant moment,
    Succession versions,
    Register register,
    List<Judgement> judgements,
    List<Fault> faults,
    List<FileRead> files,
    Filing filing,
    Accounts accounts) {

  public DayJudged {
    judgements = List.copyOf(judgements);
    faults = List.copyOf(faults);
    files = List.copyOf(files);
  }

  /** The plan of today. */
  public Plan plan() {
    return versions.now();
  }

  Phrases phrases() {
    return new Phrases(plan());
  }

  /** For values in JSON, with times in the zone of the plan. */
  JsonTree jsonTree() {
    return new JsonTree(plan().establishment().zone());
  }

  /** The same day with the place of its records. */
  public DayJudged filed(Filing where) {
    return new DayJudged(
        book, day, moment, versions, register, judgements, faults, files, where, accounts);
  }

  /** Whether a critical or operating limit was missed, or an ask or a stop is open. */
  public boolean isAmiss() {
    return faults.stream().anyMatch(Fault::isOpen)
        || judgements.stream()
            .anyMatch(
                each ->
                    each.verdict().isMissed()
                        || !each.deviations().isEmpty()
                        || !each.operatingMisses().isEmpty()
                        || !each.openFaults().isEmpty());
  }

  /** The lots with a deviation. */
  public List<Judgement> held() {
    return judgements.stream().filter(each -> !each.deviations().isEmpty()).toList();
  }

  /** All faults, those of the lots after those of the day. */
  public List<Fault> allFaults() {
    return Stream.concat(
            faults.stream(), judgements.stream().flatMap(each -> each.faults().stream()))
        .toList();
  }
}

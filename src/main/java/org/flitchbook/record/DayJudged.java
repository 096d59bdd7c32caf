package org.flitchbook.record;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.account.Accounts;
import org.flitchbook.archive.SkippedDays;
import org.flitchbook.change.Change;
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

  /**
   * Where a close puts its records, and why it is made.
   *
   * @param revision of the day's records, from 1; 0 where they are printed outside of the book
   * @param line the number of the ledger's last line before this close; 0 where it has none
   * @param hash of that line
   * @param amends the revision that this one follows; 0 for the first
   * @param by the initials of the one who closes; empty where nobody is named
   * @param reason why records that were closed are made again
   * @param changes in the inputs since the revision that this one follows
   * @param days that were skipped, as this close finds them
   */
  public record Filing(
      int revision,
      long line,
      String hash,
      int amends,
      String by,
      String reason,
      List<Change> changes,
      SkippedDays days) {

    /** Records that are printed outside of the book, or not at all. */
    public static final Filing OUTSIDE =
        new Filing(0, 0, "", 0, "", "", List.of(), SkippedDays.NONE);

    public Filing {
      changes = List.copyOf(changes);
      if (revision < 0 || amends < 0 || amends >= Math.max(1, revision)) {
        throw new IllegalArgumentException("revision " + revision + " after " + amends);
      }
    }

    public boolean isFiled() {
      return revision > 0;
    }

    public boolean isAmendment() {
      return amends > 0;
    }
  }

  /** The plan of today. */
  public Plan plan() {
    return versions.now();
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

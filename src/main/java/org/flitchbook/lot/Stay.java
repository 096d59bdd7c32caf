package org.flitchbook.lot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * A lot's passage through one step.
 *
 * @param into the first entry that says it went in
 * @param out the last entry that says it came out; empty while it is in, or where nobody wrote it
 * @param visits the places it lay in, in the order of time
 * @param absences the times that it, or a piece of it, was out before it went in again
 */
public record Stay(
    Step step, Entry into, Optional<Entry> out, List<Visit> visits, List<Absence> absences) {

  public Stay {
    visits = List.copyOf(visits);
    absences = List.copyOf(absences);
  }

  /** Out of the step by one entry, and into it again by another. */
  public record Absence(Entry out, Entry again) {}

  /**
   * Some time in one place.
   *
   * @param until when it left for another place or came out; empty while it is there
   */
  public record Visit(String place, Moment from, Optional<Moment> until) {

    boolean holds(long atMillis) {
      return atMillis >= from.earliest().toEpochMilli()
          && until.map(end -> atMillis <= end.latest().toEpochMilli()).orElse(true);
    }
  }

  /** Those of a lot, by its entries. */
  static List<Stay> all(List<Entry> entries) {
    return Step.ofWork().stream()
        .filter(step -> entries.stream().anyMatch(entry -> entry.is(step.into())))
        .map(step -> of(step, inOrder(entries, step.into()), inOrder(entries, step.outOf())))
        .toList();
  }

  private static Stay of(Step step, List<Entry> intos, List<Entry> outs) {
    Entry into = intos.get(0);
    Entry lastInto = intos.get(intos.size() - 1);
    Optional<Entry> out =
        last(outs.stream())
            .filter(
                end -> end.time().isBefore(into.time()) || !end.time().isBefore(lastInto.time()));
    List<Visit> visits = new ArrayList<>();
    List<Absence> absences = new ArrayList<>();
    for (int i = 0; i < intos.size(); i++) {
      Entry each = intos.get(i);
      Optional<Entry> next =
          intos.stream()
              .skip(i + 1L)
              .filter(other -> other.piece().equals(each.piece()))
              .findFirst();
      Optional<Entry> lastOut = lastOut(each, next, outs);
      visits.add(new Visit(each.item(), each.time(), lastOut.or(() -> next).map(Entry::time)));
      lastOut.flatMap(end -> next.map(again -> new Absence(end, again))).ifPresent(absences::add);
    }
    return new Stay(step, into, out, visits, absences);
  }

  private static List<Entry> inOrder(List<Entry> entries, What what) {
    return entries.stream()
        .filter(entry -> entry.is(what))
        .sorted(Comparator.comparing(entry -> entry.time().earliest()))
        .toList();
  }

  private static Optional<Entry> last(Stream<Entry> entries) {
    return entries.reduce((earlier, later) -> later);
  }

  /** The last entry that says that a piece came out before it went in again. */
  private static Optional<Entry> lastOut(Entry into, Optional<Entry> next, List<Entry> outs) {
    return last(
        outs.stream()
            .filter(out -> out.piece().isEmpty() || out.piece().equals(into.piece()))
            .filter(out -> !out.time().isBefore(into.time()))
            .filter(out -> next.map(again -> out.time().isBefore(again.time())).orElse(true)));
  }

  /** Whether, of these, it is in that step: gone in, not come out, and in no later step. */
  static boolean isRunning(Step step, List<Stay> stays) {
    return stays.stream()
            .filter(stay -> stay.step() == step)
            .findFirst()
            .filter(stay -> stay.out().isEmpty())
            .isPresent()
        && stays.stream().noneMatch(stay -> stay.step().compareTo(step) > 0);
  }

  /** Whether it is one of the two in which the core is warm. */
  boolean isHeat() {
    return step == Step.SMOKE || step == Step.CHILL;
  }

  /** Whether it came out before it went in, as it was written. */
  boolean goesBack() {
    return out.filter(end -> end.time().isBefore(into.time())).isPresent();
  }
}

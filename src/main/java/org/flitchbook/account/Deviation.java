package org.flitchbook.account;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * How far a critical limit was missed, and when.
 *
 * @param limit its id
 * @param beyond the size of the excess; empty where nothing beyond the limit was measured
 * @param stages that were missed and that began
 * @param readings the first and the last that the finding rests on, where no stage was missed
 * @param found the entry that it was found, else the first hold of the lot
 */
public record Deviation(
    String limit,
    Optional<Quantity> beyond,
    List<Period> stages,
    Optional<Period> readings,
    Optional<Entry> found) {

  /**
   * From a time to another one, both included.
   *
   * @param until empty where the end was not seen
   */
  public record Period(Instant from, Optional<Instant> until) {}

  static Deviation of(Lot lot, Finding finding) {
    List<Period> stages =
        finding.parts().stream()
            .filter(part -> part.verdict().isMissed())
            .flatMap(part -> part.start().map(from -> new Period(from, part.end())).stream())
            .toList();
    return new Deviation(
        finding.limit().id(),
        finding.measured().flatMap(Deviation::beyond),
        stages,
        stages.isEmpty() ? readings(lot, finding) : Optional.empty(),
        lot.first(What.FOUND).or(() -> lot.first(What.HELD)));
  }

  private static Optional<Quantity> beyond(Measured measured) {
    return Optional.of(measured.margin())
        .filter(margin -> margin.value().signum() < 0)
        .map(margin -> new Quantity(margin.value().abs(), margin.unit()));
  }

  private static Optional<Period> readings(Lot lot, Finding finding) {
    Stream<Instant> written =
        lot.entries().stream()
            .filter(entry -> finding.evidence().contains(entry.place()))
            .map(entry -> entry.time().written());
    Stream<Instant> logged = lot.tracks().stream().flatMap(each -> logged(each.track(), finding));
    List<Instant> times = Stream.concat(written, logged).sorted().toList();
    return times.isEmpty()
        ? Optional.empty()
        : Optional.of(new Period(times.get(0), Optional.of(times.get(times.size() - 1))));
  }

  private static Stream<Instant> logged(Track track, Finding finding) {
    return IntStream.range(0, track.size())
        .filter(i -> finding.evidence().contains(track.place(i)))
        .mapToObj(i -> Instant.ofEpochMilli(track.earliest(i)));
  }
}

package org.flitchbook.account;

import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Verdict;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Base;
import org.flitchbook.sums.MassBalance;
import org.flitchbook.sums.Worked;

/**
 * What is added up about one lot beside its limits. The names of the components are keys of the
 * record's JSON and stay.
 *
 * @param steps through which it passed
 * @param yields one for each weight, in order of time
 * @param rind one for each piece whose rind was weighed by itself
 * @param massBalance empty where nothing was packed, cut off or thrown away
 * @param keepUntil empty where no rule of the regime is known
 * @param reviewedAfter the time from the last entry before the review to the review, in h
 * @param deviations one for each of the judgement's, in the same order
 * @param margins of the findings that have one
 * @param delays of the entries that were typed later than they were made
 * @param instruments that its entries and logs name
 * @param readings one for each of the lot's tracks, in the same order
 */
public record LotAccount(
    List<Stay> steps,
    TimeAbove timeAbove,
    List<Yield> yields,
    List<RindOff> rind,
    Optional<PackedBalance> massBalance,
    Distribution distribution,
    HeldMass held,
    Optional<Keeping> keepUntil,
    Optional<Quantity> reviewedAfter,
    Evidence evidence,
    Open open,
    List<Deviation> deviations,
    List<MarginShare> margins,
    List<Delay> delays,
    List<InstrumentState> instruments,
    List<ProbeReadings> readings) {

  /** A weight of the lot or a piece, and what it is of the one before and of the green, in %. */
  public record Yield(Entry weight, Optional<Quantity> ofBefore, Optional<Quantity> ofGreen) {}

  /**
   * A piece that was weighed with its rind on, and its rind by itself: the base, which is what is
   * left and on which the sums of the cure are calculated, also in % of the green weight.
   */
  public record RindOff(Entry green, Base base, Quantity ofGreen) {}

  /**
   * What was packed, cut off and thrown away against the last weight, of which the unexplained
   * share is in %. Of a lot in pieces {@code after} is the last weight of one of them.
   */
  public record PackedBalance(
      Entry after,
      MassBalance masses,
      Worked unexplained,
      Quantity unexplainedShare,
      List<Place> evidence) {}

  /**
   * What was packed, left the house, came back, was destroyed, and should be left. Each is the sum
   * of its entries in g, and empty where one of them has no weight.
   */
  public record Distribution(
      Optional<Quantity> greenWeight,
      Optional<Quantity> packed,
      Optional<Quantity> dispatched,
      Optional<Quantity> returned,
      Optional<Quantity> destroyed,
      Optional<Quantity> left,
      List<Place> evidence) {}

  /**
   * What was written down as held, else the last weight, and what is left of it when all
   * dispositions with a mass are taken off; in g.
   */
  public record HeldMass(
      Optional<Quantity> mass, List<Entry> dispositions, Optional<Quantity> left) {}

  /**
   * How much evidence there is.
   *
   * @param entries by hand, in force, and {@code corrections} those that replaced one
   * @param logs counted once each, and {@code readings} all that they hold
   * @param gaps of the logs, and {@code longestGap} in min; empty where there is none
   * @param lapsed the instruments without a good check that holds at the moment judged
   */
  public record Evidence(
      int entries,
      int corrections,
      int logs,
      long readings,
      int gaps,
      Optional<Quantity> longestGap,
      List<String> lapsed) {}

  /**
   * What is open: deviations, limits that wait for their step, faults in the data that somebody
   * must explain; and the other faults, which are notes.
   */
  public record Open(int deviations, long pending, int doubts, int notes) {}

  /** How long after the event an entry was typed, in min at the least; late by the plan's rule. */
  public record Delay(Place place, Quantity after, boolean late) {}

  /** An instrument at the moment judged; in force where its last check was good and still holds. */
  public record InstrumentState(
      String id, String kind, Quantity tolerance, Optional<LastCheck> last, boolean inForce) {}

  /** A check of an instrument, until when it holds, and what it read less what it should have. */
  public record LastCheck(Entry check, Quantity error, boolean passed, Instant until) {}

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
      List<Between> stages,
      Optional<Between> readings,
      Optional<Entry> found) {

    static Deviation of(Lot lot, Finding finding) {
      List<Between> stages =
          finding.parts().stream()
              .filter(part -> part.verdict().isMissed())
              .flatMap(part -> part.start().map(from -> new Between(from, part.end())).stream())
              .toList();
      return new Deviation(
          finding.limit().id(),
          finding
              .measured()
              .map(Measured::margin)
              .filter(margin -> margin.value().signum() < 0)
              .map(margin -> new Quantity(margin.value().abs(), margin.unit())),
          stages,
          stages.isEmpty() ? readings(lot, finding) : Optional.empty(),
          lot.first(What.FOUND).or(() -> lot.first(What.HELD)));
    }

    private static Optional<Between> readings(Lot lot, Finding finding) {
      Stream<Instant> written =
          lot.entries().stream()
              .filter(entry -> finding.evidence().contains(entry.place()))
              .map(entry -> entry.time().written());
      Stream<Instant> logged = lot.tracks().stream().flatMap(each -> logged(each.track(), finding));
      List<Instant> times = Stream.concat(written, logged).sorted().toList();
      return times.isEmpty()
          ? Optional.empty()
          : Optional.of(new Between(times.get(0), Optional.of(times.get(times.size() - 1))));
    }

    private static Stream<Instant> logged(Track track, Finding finding) {
      return IntStream.range(0, track.size())
          .filter(i -> finding.evidence().contains(track.place(i)))
          .mapToObj(i -> Instant.ofEpochMilli(track.earliest(i)));
    }
  }

  /** From a time to another one, both included; without an end where that was not seen. */
  public record Between(Instant from, Optional<Instant> until) {}

  /**
   * Until when a record is kept.
   *
   * @param until the last day on which it must still be there
   * @param from the day of the last shipment, or the day judged where nothing was shipped
   * @param rule what that rests on, in words
   */
  public record Keeping(
      LocalDate until, LocalDate from, boolean fromShipment, Period keep, String rule) {}

  /**
   * The margin of a finding as a share of its limit, below 0 where the limit is missed.
   *
   * @param limit its id
   * @param share in %; of {@link #DEGREES} where the limit is a temperature, which has no zero that
   *     it could be a part of; all of it where a limit of 0 is missed
   */
  public record MarginShare(String limit, Quantity share) {

    private static final Quantity DEGREES = Quantity.of(10, Unit.CELSIUS);

    /** Empty where nothing was measured, and while the limit is pending. */
    public static Optional<MarginShare> of(Finding finding) {
      return finding
          .measured()
          .filter(measured -> finding.verdict() != Verdict.PENDING)
          .map(measured -> share(measured.limit(), measured.margin()).times(Ratio.of(100)))
          .map(share -> new Quantity(share, Unit.PERCENT))
          .map(share -> new MarginShare(finding.limit().id(), share));
    }

    private static Ratio share(Quantity limit, Quantity margin) {
      Ratio whole =
          limit.dimension() == Dimension.TEMPERATURE
              ? DEGREES.differenceIn(margin.unit()).value()
              : limit.in(margin.unit()).value().abs();
      return whole.signum() == 0
          ? Ratio.of(Math.min(0, margin.value().signum()))
          : margin.value().over(whole);
    }
  }
}

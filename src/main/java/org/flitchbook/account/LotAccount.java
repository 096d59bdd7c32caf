package org.flitchbook.account;

import java.time.Instant;
import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import java.util.Optional;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Verdict;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Stay;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
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

  /**
   * A weight of the lot or a piece with what it is of those before it, in %.
   *
   * @param ofBefore of the weight before; empty for the first
   * @param ofGreen of the green weight; empty where it was never weighed green
   */
  public record Yield(Entry weight, Optional<Quantity> ofBefore, Optional<Quantity> ofGreen) {}

  /**
   * A piece that was weighed with its rind on, and its rind by itself.
   *
   * @param base what is left, on which the sums of the cure are calculated
   * @param ofGreen what is left of the green weight, in %
   */
  public record RindOff(Entry green, Base base, Quantity ofGreen) {}

  /**
   * What was packed, cut off and thrown away against the last weight.
   *
   * @param after the last weight; of a lot in pieces that of one of them
   * @param unexplainedShare of the last weight, in %
   */
  public record PackedBalance(
      Entry after,
      MassBalance masses,
      Worked unexplained,
      Quantity unexplainedShare,
      List<Place> evidence) {}

  /**
   * What was packed, left the house, came back, was destroyed, and should be there still. Each is
   * the sum of its entries in g, and empty where one of them has no weight.
   *
   * @param left packed − dispatched + returned − destroyed
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
   * What is held, and what became of it.
   *
   * @param mass what was written down as held, in g, else the last weight; empty where there is
   *     none
   * @param dispositions those with a mass are taken off
   * @param left still to be disposed of, in g
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
   * What is open or to be noted.
   *
   * @param pending the limits that wait for their step
   * @param doubts faults in the data that somebody must explain, and {@code notes} the other faults
   */
  public record Open(int deviations, long pending, int doubts, int notes) {}

  /**
   * How much later than the event an entry was typed.
   *
   * @param after at the least, in min
   * @param late whether it is longer than the rule for late entries allows
   */
  public record Delay(Place place, Quantity after, boolean late) {}

  /**
   * An instrument at the moment judged.
   *
   * @param tolerance how far a check may be off
   * @param last the last check up to then
   * @param inForce whether that check was good and still holds
   */
  public record InstrumentState(
      String id, String kind, Quantity tolerance, Optional<LastCheck> last, boolean inForce) {}

  /**
   * A check of an instrument.
   *
   * @param error what it read less what it should have read; a difference
   * @param until when the check holds
   */
  public record LastCheck(Entry check, Quantity error, boolean passed, Instant until) {}

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
          .map(measured -> share(measured.limit(), measured.margin()))
          .map(share -> new Quantity(share.times(Ratio.of(100)), Unit.PERCENT))
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

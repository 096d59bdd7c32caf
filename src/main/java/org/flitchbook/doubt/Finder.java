package org.flitchbook.doubt;

import java.util.stream.Stream;

/** Finds by one rule what is in doubt in a lot. */
sealed interface Finder extends Rule.Numbers
    permits ClockOff,
        CoarseScale,
        CureOutOfRange,
        EnteredTogether,
        ErrorValue,
        FailedCheck,
        FinerThanScale,
        FireOut,
        Gap,
        GapOverCrossing,
        HandDisagrees,
        ImpossibleValue,
        LateEntry,
        LidOpen,
        LogBeginsLate,
        LogEndsEarly,
        NotInForce,
        Finder.OfCore,
        ProbesDisagree,
        RoundedReadings,
        SameValue,
        TimeElsewhere,
        TwoLevels,
        UnprobedPiece,
        WeightOffStep {

  Stream<Doubt> find(Subject subject);

  /** Looks at the log of each probe of the core by itself. */
  sealed interface OfCore extends Finder
      permits CoreLikeAir,
          ProbeMoved,
          ProbeNotIn,
          ProbePulled,
          ReWarming,
          Stuck,
          UnitMistaken,
          WrongSide {

    @Override
    default Stream<Doubt> find(Subject subject) {
      return subject.cores().stream().flatMap(core -> find(subject, core));
    }

    Stream<Doubt> find(Subject subject, ProbeLog core);
  }
}

package org.flitchbook.doubt;

import java.util.stream.Stream;

/**
 * Finds by one rule what is in doubt in a lot, by one of its two methods. The rules look in the
 * order in which these clauses name them.
 */
sealed interface Finder extends Rule.Numbers
    permits ExcludingRule,
        ChangeRule,
        CoreAirRule,
        ChillRule,
        SmokerRule,
        ProbeRule,
        ClockOff,
        TimeElsewhere,
        WeightRule,
        WeightOffStep,
        EntryRule,
        HandRule,
        SheetRule,
        PieceRule,
        StockRule,
        ChamberRule,
        PlanRule,
        OutAndIn,
        CorrectionRule,
        InstrumentRule,
        ReWarming,
        FinalRule {

  /**
   * Looks at the log of each probe of the core by itself, unless a rule looks at something else.
   */
  default Stream<Doubt> find(Subject subject) {
    return subject.cores().stream().flatMap(core -> find(subject, core));
  }

  default Stream<Doubt> find(Subject subject, ProbeLog core) {
    return Stream.empty();
  }
}

package org.flitchbook.record;

import java.util.List;
import java.util.function.Function;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;

/** A finding with the code of its lot, for a table of several lots. */
record LotFinding(String lot, Finding finding) {

  static List<LotFinding> of(List<Judgement> lots, Function<Judgement, List<Finding>> chosen) {
    return lots.stream()
        .flatMap(
            each ->
                chosen.apply(each).stream()
                    .map(finding -> new LotFinding(each.lot().code(), finding)))
        .toList();
  }
}

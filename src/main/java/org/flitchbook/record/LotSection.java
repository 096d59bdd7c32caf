package org.flitchbook.record;

import java.util.List;
import org.flitchbook.account.LotAccount;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Chart;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** A part of a record that is about one lot. */
abstract class LotSection extends Section {

  final Judgement judgement;
  final Lot lot;
  final LotAccount account;

  LotSection(DayJudged day, Judgement judgement) {
    super(day);
    this.judgement = judgement;
    this.lot = judgement.lot();
    this.account = day.accounts().lot(judgement);
  }

  /** The unit in which the records speak of temperatures. */
  final Unit temperature() {
    return day.plan().establishment().temperature();
  }

  /**
   * The line of a limit in a chart.
   *
   * @param name of the limit; empty where its number stands alone
   */
  final Chart.Guide guide(Quantity limit, String name) {
    return new Chart.Guide(
        unbroken((limit + " " + name).strip()),
        limit.in(temperature()).value().rounded(3).doubleValue());
  }

  /** Those of {@link Lot#tracks(What, Step)}. */
  final List<ProbeReadings> readings(What what, Step step) {
    List<Track> tracks = lot.tracks(what, step);
    return account.readings().stream().filter(each -> tracks.contains(each.track())).toList();
  }
}

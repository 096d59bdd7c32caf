package org.flitchbook.record;

import java.util.List;
import org.flitchbook.account.LotAccount;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.check.Judgement;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
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

  /** Those of {@link Lot#tracks(What, Step)}. */
  final List<ProbeReadings> readings(What what, Step step) {
    List<Track> tracks = lot.tracks(what, step);
    return account.readings().stream().filter(each -> tracks.contains(each.track())).toList();
  }
}

package org.flitchbook.lot;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Curve;

/** One probe's readings for one lot: a log's column with the hand readings laid into it. */
public sealed interface Track extends Curve permits MergedTrack {

  What what();

  /** The probe, or "hand" where no log was kept. */
  String called();

  /** The log's file and column, without a line; where no log was kept, the first entry. */
  Place origin();

  /** The log's instrument; empty where no log was kept. */
  String instrument();

  /** The piece that the probe sat in, as far as it is known. */
  ProbedPiece piece();

  /** The place of the plan that one reading was taken of; empty where it names none. */
  String room(int index);

  /** The entry of a reading by hand; empty for one of the log. */
  Optional<Entry> entry(int index);

  /** Where one reading stands. */
  Place place(int index);

  /**
   * The ways in which it is read, of which the worst counts: with all readings by hand, and without
   * those taken beside a log that went on, or hotter than it was on both sides of its gap. They may
   * count against the lot and never for it: one mistyped must not restart a clock.
   */
  List<Track> ways();

  /** Its readings from one time to another, both included; empty where there are none. */
  Optional<Track> during(Instant from, Instant until);

  /** The unit in which the readings were written. */
  Unit unit();

  /** The readings that were left out, in the order of time. They are no part of the curve. */
  List<Excluded> excluded();

  /**
   * The same track without the log's readings in a stretch; one of another column leaves all in.
   *
   * @param why each of them is left out, in a few words
   */
  Track without(Stretch stretch, String why);

  /**
   * A reading of the log that was left out of the curve. It is printed, and counts for nothing.
   *
   * @param at in ms since 1970, and the level as the log wrote it
   */
  record Excluded(long at, long level, Place place, String why, Stretch.Standing standing) {}
}

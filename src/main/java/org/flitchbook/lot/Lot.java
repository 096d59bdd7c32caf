package org.flitchbook.lot;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Stretch;
import org.flitchbook.plan.Product;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * What is known of one lot: its entries in force, in order of time, its passage through the steps,
 * and its probes' readings.
 *
 * @param product empty where no entry names a product of the plan
 * @param corrections the entries that were replaced
 * @param tracks of its probes and its places, see {@link #tracks(What, Step)}
 * @param filed the days in whose folders something of it stands
 * @param logs the series that name it, whole: with what was read before and after its steps, too
 */
public record Lot(
    String code,
    Optional<Product> product,
    List<Entry> entries,
    List<Correction> corrections,
    List<Stay> stays,
    List<StepTrack> tracks,
    List<Fault> faults,
    SortedSet<LocalDate> filed,
    List<Series> logs) {

  public Lot {
    entries = entries.stream().sorted(Comparator.comparing(e -> e.time().earliest())).toList();
    corrections = List.copyOf(corrections);
    stays = List.copyOf(stays);
    tracks = List.copyOf(tracks);
    faults = List.copyOf(faults);
    logs = List.copyOf(logs);
  }

  /** An entry that another one replaced; it stays visible. */
  public record Correction(Entry replaced, Entry by) {}

  /** A track with the step during which it counts. */
  public record StepTrack(Step step, Track track) {}

  public Optional<Stay> stay(Step step) {
    return stays.stream().filter(stay -> stay.step() == step).findFirst();
  }

  /** All entries about something, in order of time. */
  public List<Entry> all(What what) {
    return entries.stream().filter(entry -> entry.is(what)).toList();
  }

  public Optional<Entry> first(What what) {
    return entries.stream().filter(entry -> entry.is(what)).findFirst();
  }

  public Optional<Entry> last(What what) {
    return entries.stream().filter(entry -> entry.is(what)).reduce((a, b) -> b);
  }

  /** The first step after this one that has begun. */
  public Optional<Stay> laterThan(Step step) {
    return stays.stream().filter(stay -> stay.step().compareTo(step) > 0).findFirst();
  }

  /** Whether the lot is in that step: gone in, not come out, and in no later step. */
  public boolean isRunning(Step step) {
    return Stay.isRunning(step, stays);
  }

  public boolean isRunning() {
    return stays.stream().anyMatch(stay -> isRunning(stay.step()));
  }

  /** When the step ended: the entry that says so, else the beginning of a later step. */
  public Optional<Moment> end(Step step) {
    return stay(step).flatMap(Stay::out).or(() -> laterThan(step).map(Stay::into)).map(Entry::time);
  }

  /**
   * The readings of something during a step, one track a probe. The internal temperature is one
   * track over smoke and chill, whichever of the two is asked for; for the release it is that
   * track, which may go on, and beside it what was read by hand on the sheet of the dispatch.
   */
  public List<Track> tracks(What what, Step step) {
    return tracks.stream()
        .filter(each -> each.track().what() == what)
        .filter(each -> each.step() == step || isOfTheCore(what, each.step(), step))
        .map(StepTrack::track)
        .toList();
  }

  /** The same, but where one probe of the core went on for another the two are one track. */
  public List<Track> curves(What what, Step step, Practice practice) {
    List<Track> tracks = tracks(what, step);
    return what == What.INTERNAL_TEMPERATURE
        ? new Handover(tracks, practice.handover()).curves()
        : tracks;
  }

  /** Those without the probes that went on for another once the lot was out of the smoke. */
  public List<Track> heated(What what, Step step, Practice practice) {
    List<Track> tracks = tracks(what, step);
    return what == What.INTERNAL_TEMPERATURE
        ? new Handover(tracks, practice.handover()).without(this::isOfTheChillAlone)
        : tracks;
  }

  private boolean isOfTheChillAlone(Track track) {
    long begin = track.earliest(track.loggedAtOrAfter(0));
    return end(Step.SMOKE).filter(out -> begin > out.latest().toEpochMilli()).isPresent();
  }

  private static boolean isOfTheCore(What what, Step kept, Step asked) {
    return what == What.INTERNAL_TEMPERATURE && (asked == Step.RELEASE || kept != Step.RELEASE);
  }

  /** The same lot without the readings of a stretch; a track without any reading is left out. */
  public Lot without(Stretch stretch, String why) {
    return new Lot(
        code,
        product,
        entries,
        corrections,
        stays,
        tracks.stream()
            .map(each -> new StepTrack(each.step(), each.track().without(stretch, why)))
            .filter(each -> each.track().size() > 0)
            .toList(),
        faults,
        filed,
        logs);
  }

  public Lot with(List<Fault> own) {
    return new Lot(code, product, entries, corrections, stays, tracks, own, filed, logs);
  }

  /** The last time at which anything was read of it, by hand or by a log. */
  public Optional<Instant> lastTime() {
    Stream<Instant> written = entries.stream().map(entry -> entry.time().earliest());
    Stream<Instant> logged =
        tracks.stream()
            .map(StepTrack::track)
            .map(track -> Instant.ofEpochMilli(track.earliest(track.size() - 1)));
    return Stream.concat(written, logged).max(Comparator.naturalOrder());
  }
}

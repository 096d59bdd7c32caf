package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.plan.Product;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Exposure;

/**
 * How long the lot was in the warm in all, which no limit of a single step adds up. The levels are
 * those of the product's own limits; the time is counted at its worse end.
 */
final class WarmSection {

  private final Lot lot;
  private final List<WarmBand> bands;
  private final Phrases phrases;

  WarmSection(Lot lot, Phrases phrases) {
    this.lot = lot;
    this.phrases = phrases;
    this.bands = lot.product().map(WarmBand::of).orElse(List.of());
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    List<Watched> watched = watched();
    if (!bands.isEmpty() && !watched.isEmpty()) {
      blocks.add(table(watched));
      blocks.add(
          new Block.Paragraph(
              phrases
                  .bound()
                  .muted(
                      phrases.say(
                          "record.warm.unseen-told",
                          "Unseen is the time between readings too far apart to tell, the one"
                              + " before and the one behind it outside; it is in no column."))));
    } else if (!bands.isEmpty()) {
      blocks.add(phrases.nothingOf(phrases.say("record.batch.warm", "Time in the warm")));
    }
    without().map(phrases::paragraph).ifPresent(blocks::add);
    return blocks;
  }

  private Optional<String> without() {
    List<String> missing =
        lot.product().map(WarmBand::missing).orElse(List.of("cold holding", "come-up"));
    return missing.isEmpty()
        ? Optional.empty()
        : Optional.of(
            phrases.say(
                "record.warm.without",
                "The product has no limit of {0} that gives a temperature, so no time is added up"
                    + " against one.",
                phrases.either("covers", missing)));
  }

  /**
   * What was watched through a step.
   *
   * @param inTurn whether the tracks are of places one after the other, so that their times add up;
   *     else the worst counts
   * @param counts whether it counts in the total
   */
  private record Watched(
      String step, What what, List<Track> tracks, boolean inTurn, boolean counts) {

    Exposure exposure(WarmBand band) {
      Stream<Exposure> all = tracks.stream().map(band::longest);
      return all.reduce(inTurn ? WarmSection::plus : WarmSection::longer).orElse(NONE);
    }

    /** What goes on after a step with air or water is counted by what comes next. */
    Exposure inTotal(WarmBand band) {
      Exposure time = exposure(band);
      boolean running = what == What.INTERNAL_TEMPERATURE && time.running();
      return new Exposure(time.longest(), time.unseen(), time.beginsInside(), running);
    }
  }

  private static final Exposure NONE = new Exposure(0, 0, false, false);

  private static Exposure plus(Exposure one, Exposure other) {
    return new Exposure(
        one.longest() + other.longest(),
        one.unseen() + other.unseen(),
        one.beginsInside() || other.beginsInside(),
        one.running() || other.running());
  }

  private static Exposure longer(Exposure one, Exposure other) {
    return other.longest() > one.longest() ? other : one;
  }

  /** The air of the cooler tells nothing of a hot piece, so that it never counts for the chill. */
  private List<Watched> watched() {
    List<Watched> all = new ArrayList<>();
    air(Step.CURE, What.COOLER_TEMPERATURE, true).ifPresent(all::add);
    air(Step.SOAK, What.WATER_TEMPERATURE, true).ifPresent(all::add);
    air(Step.DRY, What.COOLER_TEMPERATURE, true).ifPresent(all::add);
    List<Track> cores = cores();
    if (!cores.isEmpty() || Stream.of(Step.SMOKE, Step.CHILL).anyMatch(this::hasBegun)) {
      all.add(
          new Watched(
              phrases.say("record.warm.heat", "smoke and chill"),
              What.INTERNAL_TEMPERATURE,
              cores,
              false,
              true));
    }
    air(Step.CHILL, What.COOLER_TEMPERATURE, false).ifPresent(all::add);
    return all;
  }

  private boolean hasBegun(Step step) {
    return lot.stay(step).isPresent();
  }

  private List<Track> cores() {
    return lot.tracks(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  private Optional<Watched> air(Step step, What what, boolean counts) {
    return lot.stay(step)
        .map(
            stay ->
                new Watched(
                    phrases.step(step),
                    what,
                    lot.tracks(what, step),
                    stay.visits().size() > 1,
                    counts));
  }

  private Block table(List<Watched> watched) {
    Grid grid =
        phrases
            .grid("record.warm.caption", "Time in the warm, at its worse end")
            .head("record.head.step", "Step", 6)
            .head("record.head.what", "What", 8)
            .head("record.head.probe", "Probe", 5);
    bands.forEach(band -> grid.numbers(Phrases.capital(band.name(phrases)), 7));
    grid.head("record.head.remark", "Remark", 18);
    watched.forEach(each -> rows(grid, each));
    long pauses = pauses();
    List<Exposure> unwatched =
        bands.stream().map(band -> new Exposure(pauses, 0, false, false)).toList();
    row(
        grid,
        phrases.say("record.warm.between-steps", "between steps"),
        phrases.say("record.warm.nobody", "nobody watched"),
        "–",
        unwatched,
        List.of(phrases.say("record.warm.counted", "counted as warm")));
    List<Exposure> total = bands.stream().map(band -> total(watched, band, pauses)).toList();
    row(
        grid,
        phrases.say("record.warm.total", "total"),
        phrases.say("record.warm.all-steps", "all steps"),
        phrases.say("record.warm.worst", "the worst"),
        total,
        notRecorded(watched));
    return grid.table();
  }

  private void rows(Grid grid, Watched watched) {
    String what = phrases.word("what", watched.what().word());
    List<String> apart =
        watched.counts()
            ? List.of()
            : List.of(phrases.say("record.warm.not-in-total", "not in the total"));
    if (watched.tracks().isEmpty()) {
      List<String> cells = new ArrayList<>(List.of(watched.step(), what, phrases.notRecorded()));
      bands.forEach(band -> cells.add("–"));
      cells.add(String.join("; ", apart));
      grid.row(cells.toArray(String[]::new));
    }
    for (Track track : watched.tracks()) {
      List<Exposure> times = bands.stream().map(band -> band.longest(track)).toList();
      row(grid, watched.step(), what, phrases.probe(track), times, apart);
    }
  }

  private void row(
      Grid grid,
      String step,
      String what,
      String probe,
      List<Exposure> times,
      List<String> remarks) {
    List<String> cells = new ArrayList<>(List.of(step, what, probe));
    times.forEach(time -> cells.add(shown(time.longest())));
    List<String> told = new ArrayList<>(remarks);
    told.addAll(open(times));
    cells.add(String.join("; ", told));
    grid.row(cells.toArray(String[]::new));
  }

  /** What the readings leave open, said once where it is alike for every band. */
  private List<String> open(List<Exposure> times) {
    List<String> each = times.stream().map(this::open).toList();
    if (each.stream().distinct().count() == 1) {
      return each.stream().distinct().filter(told -> !told.isEmpty()).toList();
    }
    return IntStream.range(0, each.size())
        .filter(i -> !each.get(i).isEmpty())
        .mapToObj(i -> bands.get(i).name(phrases) + ": " + each.get(i))
        .toList();
  }

  /** The time that it may add is in no column. */
  private String open(Exposure time) {
    List<String> open = new ArrayList<>();
    if (time.beginsInside()) {
      open.add(phrases.say("record.warm.begins-inside", "begins inside"));
    }
    if (time.running()) {
      open.add(phrases.say("record.warm.still-inside", "still inside"));
    }
    if (time.unseen() > 0) {
      open.add(phrases.say("record.warm.unseen", "unseen {0}", shown(time.unseen())));
    }
    return String.join(", ", open);
  }

  private static String shown(long millis) {
    return Phrases.quantity(new Quantity(Ratio.of(millis, 60_000), Unit.MINUTE));
  }

  private static Exposure total(List<Watched> watched, WarmBand band, long pauses) {
    return watched.stream()
        .filter(Watched::counts)
        .map(each -> each.inTotal(band))
        .reduce(new Exposure(pauses, 0, false, false), WarmSection::plus);
  }

  private List<String> notRecorded(List<Watched> watched) {
    return watched.stream()
        .filter(each -> each.counts() && each.tracks().isEmpty())
        .map(
            each ->
                phrases.say("record.warm.without-step", "without {0}, NOT RECORDED", each.step()))
        .toList();
  }

  /** The longest times from the end of a step to the beginning of the next, added up; in ms. */
  private long pauses() {
    return lot.product().map(Product::steps).orElse(List.of()).stream()
        .mapToLong(this::pauseAfter)
        .sum();
  }

  private long pauseAfter(Step step) {
    Optional<Moment> out = lot.stay(step).flatMap(Stay::out).map(Entry::time);
    Optional<Moment> into = lot.laterThan(step).map(Stay::into).map(Entry::time);
    boolean isWork = lot.laterThan(step).filter(next -> next.step() != Step.RELEASE).isPresent();
    return out.isPresent() && into.isPresent() && isWork && !isSeen(out.get(), into.get())
        ? Math.max(0, out.get().longestTo(into.get()).toMillis())
        : 0;
  }

  /** Whether a probe in the meat was read before and after it, so that its own row counts it. */
  private boolean isSeen(Moment out, Moment into) {
    return cores().stream()
        .anyMatch(
            core ->
                core.earliest(0) <= out.latest().toEpochMilli()
                    && core.latest(core.size() - 1) >= into.earliest().toEpochMilli());
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Stay;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.message.Time;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Moment;
import org.flitchbook.reading.Samples;
import org.flitchbook.reading.Series;
import org.flitchbook.sheet.Step;

/** The times of a log against what was written by hand. */
sealed interface ClockRule extends Finder {

  /**
   * The clock of a core's log against what was written by hand: off by as much at both ends of the
   * smoke, or, drifting, by more at the one than at the other.
   *
   * @param above it is off where it is off by more than this
   * @param rise once it is in the smoke a core rises by this
   * @param lag at the latest so long after it went in
   * @param fall once it is out of the smoke a core falls by this
   * @param carryOver it may go on rising for so long
   * @param drop meat that came out falls by this
   * @param within in this time, which tells it from meat in a dying fire
   * @param around how much of the log before and after the smoke is looked at
   */
  @Choice({"clock offset", ClockOff.DRIFT})
  record ClockOff(
      String rule,
      Duration above,
      Degrees rise,
      Duration lag,
      Degrees fall,
      Duration carryOver,
      Degrees drop,
      Duration within,
      Duration around)
      implements ClockRule {

    static final String DRIFT = "clock drift";

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject
          .wholeLogs()
          .flatMap(
              series ->
                  heating(subject, series).stream()
                      .flatMap(heating -> offsets(subject, series, heating))
                      .reduce(Offset::and)
                      .filter(this::isOff)
                      .map(offset -> doubt(series, offset))
                      .stream());
    }

    private boolean isOff(Offset offset) {
      long most = above.toMillis();
      return rule.equals(DRIFT)
          ? offset.least() - offset.most() > most
          : offset.least() <= offset.most() && (offset.least() > most || offset.most() < -most);
    }

    private Doubt doubt(Series series, Offset offset) {
      return new Doubt(
          Subject.begin(series),
          say(
              "doubt.clock.found",
              "the clock of {0} {1}: {2}",
              series.called(),
              rule.equals(DRIFT)
                  ? say("doubt.clock.drifts", "otherwise off at the end than at the beginning")
                  : offset.said(),
              Listing.semicolons(offset.events())),
          say("doubt.clock.expected", "a clock that goes right within {0}", Subject.length(above)),
          rule.equals(DRIFT)
              ? say(
                  "do.clock-drift",
                  "Compare the logger's clock with the wall at both ends, and say which entries are"
                      + " right.")
              : say(
                  "do.clock-offset",
                  "Compare the logger's clock with the wall; if it is off, state its offset and why"
                      + " in logs.json."));
    }

    /**
     * Between which bounds a log's clock is off, by events that somebody wrote down and that the
     * log shows. Meat does not answer at once, so that one event gives no more than bounds. Where
     * two leave no time in between, the least is above the most.
     *
     * @param events what the log shows and what was written, with both times
     * @param least how far the clock is ahead at the least, in milliseconds; below 0 it is behind
     * @param most how far it is ahead at the most
     */
    private record Offset(List<Message> events, long least, long most) {

      /** Of an event that the log shows between two times, and that was written for another. */
      static Offset of(Message event, long earliest, long latest, Moment written) {
        return new Offset(
            List.of(event),
            earliest - written.latest().toEpochMilli(),
            latest - written.earliest().toEpochMilli());
      }

      Offset and(Offset other) {
        return new Offset(
            Stream.concat(events.stream(), other.events.stream()).toList(),
            Math.max(least, other.least),
            Math.min(most, other.most));
      }

      /** {@code 27 min to 79 min behind}, from the less to the more. */
      Message said() {
        boolean behind = most < 0;
        Quantity less = Subject.length(Duration.ofMillis(behind ? -most : least));
        Quantity more = Subject.length(Duration.ofMillis(behind ? -least : most));
        return behind
            ? say("doubt.clock.behind", "{0} to {1} behind", less, more)
            : say("doubt.clock.ahead", "{0} to {1} ahead", less, more);
      }
    }

    /**
     * The core rises some time after it went in, and begins to fall when it comes out, or somewhat
     * later: the outside goes on heating the inside.
     */
    private Stream<Offset> offsets(Subject subject, Series series, Heating heating) {
      Optional<Stay> smoke = subject.lot().stay(Step.SMOKE);
      Stream<Offset> rising =
          smoke.filter(stay -> heating.rises()).map(Stay::into).stream()
              .map(
                  into ->
                      Offset.of(
                          say(
                              "doubt.clock.rises",
                              "the core rises from {0} on, into smoke was written for {1}",
                              subject.clock(heating.cold()),
                              written(subject, into)),
                          heating.cold() - lag.toMillis(),
                          heating.cold() + series.precisionMillis(),
                          into.time()));
      Stream<Offset> falling =
          smoke.filter(stay -> heating.falls()).flatMap(Stay::out).stream()
              .map(
                  out ->
                      Offset.of(
                          say(
                              "doubt.clock.falls",
                              "it falls from {0} on, out of smoke was written for {1}",
                              subject.clock(heating.hot()),
                              written(subject, out)),
                          heating.peak() - carryOver.toMillis(),
                          heating.hot() + series.precisionMillis(),
                          out.time()));
      return Stream.concat(rising, falling);
    }

    private static Time written(Subject subject, Entry entry) {
      return subject.clock(entry.time().written().toEpochMilli());
    }

    /**
     * The heating of a core in a log. Times are in milliseconds since 1970.
     *
     * @param cold the last time before the core had risen from its lowest by what the rule says
     * @param peak the first time at its highest
     * @param hot the last time before it had fallen from there by what the rule says
     * @param rises whether it rises in the log, so that the beginning is seen
     * @param falls whether it falls behind as steeply as meat that came out
     */
    private record Heating(long cold, long peak, long hot, boolean rises, boolean falls) {}

    /** Around the smoke only: a log may hold what was smoked on other days as well. */
    private Optional<Heating> heating(Subject subject, Series series) {
      Samples samples = series.samples();
      long margin = around.toMillis();
      long from = subject.into(Step.SMOKE).orElse(Long.MIN_VALUE + margin) - margin;
      long to = subject.endOf(Step.SMOKE).orElse(Long.MAX_VALUE - margin) + margin;
      Set<Long> none = excluded(subject, series);
      int[] kept =
          IntStream.range(0, samples.size())
              .filter(i -> samples.at(i) >= from && samples.at(i) <= to)
              .filter(i -> !none.contains(samples.at(i)))
              .toArray();
      return kept.length == 0 ? Optional.empty() : Optional.of(heating(samples, kept));
    }

    /** When the log read what is known to be no reading. */
    private static Set<Long> excluded(Subject subject, Series series) {
      return subject.coreTracks().stream()
          .filter(track -> track.called().equals(series.called()))
          .flatMap(track -> track.excluded().stream())
          .map(Track.Excluded::at)
          .collect(Collectors.toSet());
    }

    private Heating heating(Samples samples, int[] kept) {
      int peak = 0;
      for (int i = 0; i < kept.length; i++) {
        peak = samples.level(kept[i]) > samples.level(kept[peak]) ? i : peak;
      }
      long lowest = Arrays.stream(kept, 0, peak + 1).mapToLong(samples::level).min().orElseThrow();
      int cold = peak;
      while (cold > 0 && samples.level(kept[cold]) > lowest + rise.difference()) {
        cold--;
      }
      long highest = samples.level(kept[peak]);
      int hot = kept.length - 1;
      while (hot > peak && samples.level(kept[hot]) < highest - fall.difference()) {
        hot--;
      }
      return new Heating(
          samples.at(kept[cold]),
          samples.at(kept[peak]),
          samples.at(kept[hot]),
          cold < peak && samples.level(kept[cold]) <= lowest + rise.difference(),
          isSteep(samples, Arrays.copyOfRange(kept, hot, kept.length)));
    }

    /** Meat that lies in a dying fire falls too, but slowly. */
    private boolean isSteep(Samples samples, int[] behind) {
      long until = samples.at(behind[0]) + within.toMillis();
      long floor = samples.level(behind[0]) - drop.difference();
      return Arrays.stream(behind)
          .takeWhile(i -> samples.at(i) <= until)
          .anyMatch(i -> samples.level(i) <= floor);
    }
  }

  /**
   * A log of a lot's core that begins before the lot was there, or far from when it was written
   * into the smoke: a wrong year, day and month swapped, or another lot's log.
   *
   * @param above it may begin so long before the lot's first entry, or so far from its way into
   *     smoke
   */
  @Choice({TimeElsewhere.BEFORE, "time far from its step"})
  record TimeElsewhere(String rule, Duration above) implements ClockRule {

    static final String BEFORE = "time before the lot";

    private boolean isBefore() {
      return rule.equals(BEFORE);
    }

    @Override
    public Stream<Doubt> find(Subject subject) {
      OptionalLong event = isBefore() ? firstEntry(subject) : subject.into(Step.SMOKE);
      return subject
          .wholeLogs()
          .filter(series -> event.isPresent())
          .filter(series -> away(series, event.getAsLong()) > above.toMillis())
          .map(series -> doubt(subject, series, event.getAsLong()));
    }

    private static OptionalLong firstEntry(Subject subject) {
      return subject.lot().entries().stream()
          .mapToLong(entry -> entry.time().earliest().toEpochMilli())
          .min();
    }

    private long away(Series series, long event) {
      long before = event - series.samples().at(0);
      return isBefore() ? before : Math.abs(before);
    }

    private Doubt doubt(Subject subject, Series series, long event) {
      LocalDateTime written = time(subject, event);
      return new Doubt(
          Subject.begin(series),
          say(
              "doubt.elsewhere.found",
              "the log of {0} begins at {1}, {2} away",
              series.called(),
              time(subject, series.samples().at(0)),
              Subject.length(Duration.ofMillis(away(series, event)))),
          isBefore()
              ? say("doubt.elsewhere.lot", "times from the lot's first entry on, {0}", written)
              : say(
                  "doubt.elsewhere.smoke",
                  "times about those of the smoke, written for {0}",
                  written),
          isBefore()
              ? say(
                  "do.time-before-the-lot",
                  "Look at the year, at day and month, and at \"from\" in logs.json; or name the"
                      + " lot that it is of.")
              : say(
                  "do.time-far-from-its-step",
                  "Look at the date of the log and of the entry; or name the lot that it is of."));
    }

    private static LocalDateTime time(Subject subject, long at) {
      return LocalDateTime.ofInstant(
          Instant.ofEpochMilli(at), subject.plan().establishment().zone());
    }
  }
}

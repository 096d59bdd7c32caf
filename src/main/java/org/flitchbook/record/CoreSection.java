package org.flitchbook.record;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Measured;
import org.flitchbook.check.Part;
import org.flitchbook.document.Block;
import org.flitchbook.lot.Track;
import org.flitchbook.plan.Kind;
import org.flitchbook.record.ChartSection.ProbePlot;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** What the probes say of smoke and chill: stages, checkpoints, and which probe it was. */
final class CoreSection extends LotSection {

  private static final long HALF_HOUR = 1_800_000L;
  private static final int MOST_ROWS = 48;
  private static final Duration AROUND = Duration.ofMinutes(10);

  private final List<ProbeReadings> cores;

  CoreSection(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.cores = readings(What.INTERNAL_TEMPERATURE, Step.SMOKE);
  }

  List<Block> blocks() {
    return new Blocks().add(stages()).add(held()).add(checkpoints()).list();
  }

  /** A stage with the limit that it belongs to. */
  private record Stage(Finding finding, Part part) {
    static Stream<Stage> of(Finding finding) {
      return finding.parts().stream().map(part -> new Stage(finding, part));
    }

    String shown(Function<Measured, String> shown) {
      return part.measured().map(shown).orElse("–");
    }
  }

  private Optional<Block> stages() {
    List<Stage> stages = judgement.findings().stream().flatMap(Stage::of).toList();
    return table("record.core.crossings", "Crossings, worst case (month-day and clock)", stages)
        .column(LIMIT, 12, stage -> name(stage.finding().limit()))
        .column("record.core.stage", "Stage", 0, stage -> band(stage.part()))
        .column(PROBE, 0, stage -> probe(stage.part().probe()))
        .column("record.core.starts", "Starts", 0, stage -> shortTime(stage.part().start()))
        .column("record.core.stops", "Stops", 0, stage -> shortTime(stage.part().end()))
        .number("record.core.time", "Time", 0, stage -> stage.shown(m -> quantity(m.value())))
        .number("record.core.interpolated", "Interpolated", 0, s -> s.shown(this::interpolated))
        .number(LIMIT_VALUE, 0, stage -> stage.shown(Phrases::sign))
        .verdict(0, stage -> stage.part().verdict())
        .ifAny();
  }

  private String interpolated(Measured measured) {
    return measured.interpolated().map(Phrases::quantity).orElse("–");
  }

  private String band(Part part) {
    return range(part.from(), part.to());
  }

  private String shortTime(Optional<Instant> time) {
    return time.map(this::shortTime).orElse("–");
  }

  /** The tables of time at temperature, where the plan has one. */
  private Optional<Block> held() {
    List<Finding> held =
        judgement.findings().stream()
            .filter(finding -> finding.limit().kind() instanceof Kind.TimeAtTemperature)
            .toList();
    return table("record.core.held-rows", "Time at temperature, the row that came nearest", held)
        .column(LIMIT, 12, finding -> name(finding.limit()))
        .column(
            "record.core.row", "Row", 12, f -> f.measured().map(m -> say(m.quantity())).orElse("–"))
        .number("record.core.held", "Held", 8, Phrases::worst)
        .number("record.core.wanted", "Wanted", 8, f -> f.measured().map(this::bound).orElse("–"))
        .verdict(8, Finding::verdict)
        .ifAny();
  }

  /** A reading of a probe, with what there is to say of it. */
  private record Checkpoint(String probe, Reading reading, Set<String> remarks) {}

  /**
   * Of each probe the readings at which a stage begins or ends, its extremes, those by hand, and
   * one every half an hour; every few hours where that would be too many.
   */
  private Block checkpoints() {
    List<Checkpoint> all =
        cores.stream()
            .flatMap(core -> checkpoints(core).stream())
            .sorted(Comparator.comparing(each -> each.reading().at()))
            .toList();
    return table("record.core.checkpoints", "Checkpoints", all)
        .column(TIME, 10, each -> time(each.reading().at()))
        .column(PROBE, 6, each -> probe(each.probe()))
        .number("record.core.internal", "Internal", 7, each -> level(each.reading()))
        .number("record.core.around", "Around it", 7, each -> around(each.reading().at()))
        .column(REMARK, 14, each -> String.join("; ", each.remarks()))
        .where(16, each -> each.reading().place())
        .or(nothingOf("record.core.internal-temperature", "Internal temperature"));
  }

  private List<Checkpoint> checkpoints(ProbeReadings core) {
    Map<Integer, Set<String>> remarks = remarks(core);
    everyHalfHour(core.track()).forEach(index -> remarks.putIfAbsent(index, Set.of()));
    return remarks.entrySet().stream()
        .map(each -> new Checkpoint(core.probe(), core.reading(each.getKey()), each.getValue()))
        .toList();
  }

  /** What there is to say of some readings, by their index. */
  private Map<Integer, Set<String>> remarks(ProbeReadings core) {
    Track track = core.track();
    Map<Integer, Set<String>> remarks = new TreeMap<>();
    IntFunction<Set<String>> of =
        index -> remarks.computeIfAbsent(index, i -> new LinkedHashSet<>());
    of.apply(indexOf(core, core.highest())).add(say("record.core.peak", "highest"));
    of.apply(indexOf(core, core.lowest())).add(say("record.core.lowest", "lowest"));
    for (Part part : judgement.findings().stream().flatMap(f -> f.parts().stream()).toList()) {
      String begins = say("record.core.begins", "{0} begins", band(part));
      String ends = say("record.core.ends", "{0} ends", band(part));
      part.start()
          .filter(at -> isOf(part, at, core))
          .ifPresent(at -> of.apply(ProbePlot.upTo(track, at)).add(begins));
      part.end()
          .filter(at -> isOf(part, at, core))
          .ifPresent(at -> of.apply(ProbePlot.upTo(track, at)).add(ends));
    }
    IntStream.range(0, track.size())
        .filter(track::byHand)
        .forEach(index -> of.apply(index).add(say(BY_HAND)));
    return remarks;
  }

  private boolean isOf(Part part, Instant at, ProbeReadings core) {
    return readBy(cores, part, at).anyMatch(core::equals);
  }

  /** Of the probes of a stage's curve the one that read last up to a time. */
  static Stream<ProbeReadings> readBy(List<ProbeReadings> cores, Part part, Instant at) {
    return cores.stream()
        .filter(core -> part.probes().contains(core.probe()))
        .max(Comparator.comparing(core -> core.reading(ProbePlot.upTo(core.track(), at)).at()))
        .stream();
  }

  private static int indexOf(ProbeReadings core, Reading reading) {
    Track track = core.track();
    return IntStream.range(0, track.size())
        .filter(i -> track.earliest(i) == reading.at().toEpochMilli())
        .filter(i -> track.place(i).equals(reading.place()))
        .findFirst()
        .orElseThrow();
  }

  private static List<Integer> everyHalfHour(Track track) {
    int last = track.size() - 1;
    long whole = track.earliest(last) - track.earliest(0);
    long interval = HALF_HOUR * (1 + whole / (MOST_ROWS * HALF_HOUR));
    List<Integer> chosen = new ArrayList<>(List.of(0, last));
    long next = 0;
    for (int i = 0; i <= last; i++) {
      if (!track.byHand(i) && track.earliest(i) >= next) {
        chosen.add(i);
        next = track.earliest(i) / interval * interval + interval;
      }
    }
    return chosen;
  }

  /** The last reading of smoker or cooler in the ten minutes up to that time. */
  private String around(Instant at) {
    return Stream.of(
            readings(What.CHAMBER_TEMPERATURE, Step.SMOKE),
            readings(What.COOLER_TEMPERATURE, Step.CHILL))
        .flatMap(List::stream)
        .map(air -> air.reading(ProbePlot.upTo(air.track(), at)))
        .filter(air -> !air.at().isAfter(at) && !air.at().isBefore(at.minus(AROUND)))
        .reduce((one, other) -> other.at().isBefore(one.at()) ? one : other)
        .map(Phrases::level)
        .orElse("–");
  }
}

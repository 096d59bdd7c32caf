package org.flitchbook.record;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.account.ProbeReadings;
import org.flitchbook.account.ProbeReadings.Reading;
import org.flitchbook.check.Finding;
import org.flitchbook.check.Judgement;
import org.flitchbook.document.Block;
import org.flitchbook.document.Chart;
import org.flitchbook.plan.Kind;
import org.flitchbook.plan.Limit;
import org.flitchbook.reading.Moment;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The cooler over the days of the cure, with its limits, the readings by hand and the turns. */
final class HoldChart extends ChartSection {

  private static final int HEIGHT = 110;

  private final List<ProbeReadings> coolers;

  HoldChart(DayJudged day, Judgement judgement) {
    super(day, judgement);
    this.coolers = readings(What.COOLER_TEMPERATURE, Step.CURE);
  }

  /** From into cure to out of it, or to the last reading while it is there. */
  Optional<Block> block() {
    Optional<Instant> last =
        coolers.stream().map(each -> each.last().at()).max(Comparator.naturalOrder());
    Optional<Instant> to = lot.end(Step.CURE).map(Moment::written).or(() -> last);
    return lot.stay(Step.CURE)
        .map(stay -> stay.into().time().written())
        .filter(from -> last.isPresent())
        .flatMap(from -> TimeAxis.of(from, to.orElseThrow(), this))
        .map(this::chart);
  }

  private Chart chart(TimeAxis time) {
    List<ProbePlot> plots = ProbePlot.all(coolers, time);
    List<Chart.Guide> guides = guides();
    double[] seen = plots.stream().flatMapToDouble(ProbePlot::seen).toArray();
    Chart.Axis values = ValueAxis.over(temperature(), seen, guides, this).axis();
    return new Chart(
        say("record.hold.caption", "Cooler through the cure"),
        alternative(ProbePlot.gaps(plots), guides, time),
        time.axis(),
        values,
        plots.stream().map(this::curve).toList(),
        guides,
        marks(plots, time, values),
        ProbePlot.gaps(plots),
        HEIGHT);
  }

  private Chart.Curve curve(ProbePlot plot) {
    return plot.curve(
        say("record.hold.cooler", "cooler, {0}", probe(plot.readings().probe())),
        plot.readings().isLog() ? Chart.Stroke.SOLID : Chart.Stroke.THIN_DASHED);
  }

  private List<Chart.Guide> guides() {
    List<Chart.Guide> guides = new ArrayList<>();
    for (Finding finding : judgement.findings()) {
      Limit limit = finding.limit();
      if (limit.step() == Step.CURE
          && limit.kind() instanceof Kind.Holding holding
          && holding.what() == What.COOLER_TEMPERATURE) {
        guides.add(guide(holding.limit(), name(limit)));
      }
    }
    return guides;
  }

  private List<Chart.Marks> marks(List<ProbePlot> plots, TimeAxis time, Chart.Axis values) {
    List<Chart.Marker> turns =
        turns(time).stream().map(at -> new Chart.Marker(time.at(at), values.min(), "")).toList();
    Optional<Chart.Marker> top = highest().map(each -> time.marker(each, label(each)));
    List<Chart.Marker> byHand =
        plots.stream()
            .flatMap(plot -> plot.byHand(false))
            .map(each -> top.filter(each::isAt).orElse(each))
            .toList();
    return List.of(
        byHand(byHand.stream()),
        new Chart.Marks(
            say("record.hold.highest", "highest"),
            Chart.Shape.DOT,
            top.filter(each -> !byHand.contains(each)).stream().toList()),
        leftOut(plots.stream(), values),
        new Chart.Marks(say(What.TURNED), Chart.Shape.STROKE, turns));
  }

  private List<Instant> turns(TimeAxis time) {
    return lot.all(What.TURNED).stream()
        .map(turn -> turn.time().written())
        .filter(time::holds)
        .toList();
  }

  private Optional<Reading> highest() {
    return coolers.stream().map(ProbeReadings::highest).max(Comparator.comparing(Reading::level));
  }

  private String label(Reading reading) {
    return unbroken(shortTime(reading.at()) + " " + level(reading));
  }

  /** The chart in one sentence with its numbers, for those who can't see it. */
  private String alternative(List<Chart.Band> gaps, List<Chart.Guide> guides, TimeAxis time) {
    List<String> facts = new ArrayList<>();
    coolers.forEach(each -> facts.add(probe(each.probe()) + " " + levels(each)));
    highest().ifPresent(top -> facts.add(say("record.hold.highest-at", "highest {0}", label(top))));
    guides.forEach(guide -> facts.add(say("record.hold.limit", "limit {0}", guide.label())));
    facts.add(say("record.hold.turned", "turned {0} times", turns(time).size()));
    gaps.forEach(gap -> facts.add(gap.label()));
    return say(
        "record.hold.alternative",
        "Cooler of lot {0} over the cure, from {1} to {2}: {3}.",
        lot.code(),
        time(time.from()),
        time(time.to()),
        String.join("; ", facts));
  }
}

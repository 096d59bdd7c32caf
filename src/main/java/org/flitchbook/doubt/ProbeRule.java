package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The probes of one lot beside each other. */
sealed interface ProbeRule extends Finder
    permits ProbeRule.ProbesDisagree, ProbeRule.UnprobedPiece {

  /**
   * Two probes of one lot that are far apart when it comes out of the smoke.
   *
   * @param above they may be so far apart
   * @param near how long before the end of the smoke a probe may have read last
   */
  @Choice("probes disagree")
  record ProbesDisagree(Degrees above, Duration near) implements ProbeRule {

    /** What a probe read last before the finish. */
    private record AtFinish(ProbeLog core, int index) {

      long level() {
        return core.level(index);
      }
    }

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.endOf(Step.SMOKE).stream().flatMap(out -> find(subject, out));
    }

    private Stream<Doubt> find(Subject subject, long out) {
      List<AtFinish> all =
          subject.cores().stream()
              .map(core -> new AtFinish(core, core.atOrBefore(out)))
              .filter(each -> each.index() >= 0)
              .filter(each -> out - each.core().at(each.index()) <= near.toMillis())
              .sorted(Comparator.comparing(AtFinish::level))
              .toList();
      return all.stream()
          .limit(1)
          .filter(low -> all.get(all.size() - 1).level() - low.level() > above.difference())
          .map(low -> doubt(low, all.get(all.size() - 1)));
    }

    private Doubt doubt(AtFinish low, AtFinish high) {
      return new Doubt(
          high.core().place(high.index()),
          say(
              "doubt.apart.found",
              "{0}: {1}, {2}: {3}",
              high.core().probe(),
              high.core().said(high.index()),
              low.core().probe(),
              low.core().said(low.index())),
          say("doubt.apart.expected", "probes at most {0} apart at the finish", above),
          say(
              "do.probes-disagree",
              "Check both by hand; the lower one counts for heat, the higher one for cooling."));
    }
  }

  /**
   * A lot with a piece that is thicker than the one that a probe sat in: it warms and cools more
   * slowly, so that the probe shows nothing of it.
   */
  @Choice("thicker piece without a probe")
  record UnprobedPiece() implements ProbeRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      List<Track> cores = subject.coreCurves();
      return subject.lot().all(What.THICKNESS).stream()
          .map(Entry::amount)
          .max(Comparator.naturalOrder())
          .filter(most -> !cores.isEmpty() && cores.stream().noneMatch(core -> isIn(core, most)))
          .map(most -> doubt(cores, most))
          .stream();
    }

    private static boolean isIn(Track core, Quantity thickest) {
      return core.piece().thickness().filter(known -> !known.isBelow(thickest)).isPresent();
    }

    /** About the probe whose piece is not known, if there is one, since that may settle it. */
    private Doubt doubt(List<Track> cores, Quantity thickest) {
      Track core = cores.stream().filter(each -> !isKnown(each)).findFirst().orElse(cores.get(0));
      return new Doubt(
          core.origin(),
          isKnown(core)
              ? say(
                  "doubt.piece.thicker",
                  "a piece of {0} without a probe; {1} sat in one of {2}",
                  thickest.asWritten(),
                  Subject.probe(core),
                  core.piece().thickness().orElseThrow().asWritten())
              : say(
                  "doubt.piece.unknown",
                  "nobody wrote in which piece {0} sat, or how thick that one was, and one is {1}"
                      + " thick",
                  Subject.probe(core),
                  thickest.asWritten()),
          say("doubt.piece.expected", "a probe in the thickest piece"),
          say(
              "do.thicker-piece-without-a-probe",
              "The probe belongs in the thickest piece. Name the piece that it sat in: \"piece\" in"
                  + " logs.json, or the column piece of a reading by hand; else say what else shows"
                  + " the thicker one."));
    }

    private static boolean isKnown(Track core) {
      return core.piece().isStated() && core.piece().thickness().isPresent();
    }
  }
}

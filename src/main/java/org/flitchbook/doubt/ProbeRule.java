package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.lot.Passage;
import org.flitchbook.lot.Track;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Listing;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** The probes of one lot beside each other. */
sealed interface ProbeRule extends Finder
    permits ProbeRule.ProbesDisagree,
        ProbeRule.UnprobedPiece,
        ProbeRule.AnotherLoad,
        ProbeRule.Unmeasured {

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

  /**
   * A piece that was not in the same places at the same times as the one that a probe sat in: it
   * warms and cools by another air or another clock, so that the probe shows nothing of it. Where
   * nobody wrote in which piece the probe sat, it may have been any of those that its log serves.
   *
   * @param within what was carried with it went in and came out within this time
   */
  @Choice("probe in another load")
  record AnotherLoad(Duration within) implements ProbeRule {

    /** A piece, and one that the probe may have sat in, beside what only one of them did. */
    private record Apart(Track core, Passage piece, Passage probed, Entry event) {}

    @Override
    public Stream<Doubt> find(Subject subject) {
      List<Track> cores = subject.coreTracks();
      return Passage.all(subject.lot().code(), subject.lot().entries()).stream()
          .flatMap(piece -> apart(cores, piece).stream())
          .map(apart -> doubt(subject, apart));
    }

    /** Where no probe was with the piece, the first that was not. */
    private Optional<Apart> apart(List<Track> cores, Passage piece) {
      List<Optional<Apart>> each = cores.stream().map(core -> apart(core, piece)).toList();
      return each.stream().allMatch(Optional::isPresent)
          ? each.stream().flatMap(Optional::stream).findFirst()
          : Optional.empty();
    }

    private Optional<Apart> apart(Track core, Passage piece) {
      Instant last = Instant.ofEpochMilli(core.earliest(core.size() - 1));
      return core.piece().passages().stream()
          .flatMap(
              probed ->
                  piece.apartFrom(probed, within, last).stream()
                      .map(event -> new Apart(core, piece, probed, event)))
          .findFirst();
    }

    private Doubt doubt(Subject subject, Apart apart) {
      Entry event = apart.event();
      Object[] seen = {
        apart.piece().called(),
        apart.probed().called(),
        Subject.probe(apart.core()),
        event.what(),
        subject.clock(event.time().earliest().toEpochMilli()),
        event.place()
      };
      return new Doubt(
          apart.core().origin(),
          apart.core().piece().isStated()
              ? say("doubt.load.sat", "{0} not with {1}, in which {2} sat: {3} at {4} ({5})", seen)
              : say(
                  "doubt.load.may-have-sat",
                  "{0} not with {1}, in which {2} may have sat: {3} at {4} ({5})",
                  seen),
          say(
              "doubt.load.expected",
              "a probe in a piece that was in the same places at the same times, within {0}",
              Subject.length(within)),
          say(
              "do.probe-in-another-load",
              "Each load has its own probe. Name in logs.json only the lots that were with the"
                  + " probe, and under \"piece\" the one that it sat in; else say what else shows"
                  + " the other one."));
    }
  }

  /**
   * A piece whose thickness nobody wrote, beside one whose thickness is written: it may be the
   * thicker one. A piece that has a probe of its own needs none.
   */
  @Choice("piece without a thickness")
  record Unmeasured() implements ProbeRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      List<Track> cores = subject.coreTracks();
      List<Passage> pieces =
          Stream.concat(
                  Passage.all(subject.lot().code(), subject.lot().entries()).stream(),
                  cores.stream().flatMap(core -> core.piece().passages().stream()))
              .toList();
      List<String> lacking =
          pieces.stream()
              .filter(piece -> piece.thicknesses().isEmpty())
              .filter(piece -> cores.stream().noneMatch(core -> isProbed(core, piece)))
              .map(Passage::called)
              .distinct()
              .toList();
      return pieces.stream()
          .filter(piece -> !cores.isEmpty() && !lacking.isEmpty())
          .flatMap(piece -> piece.thicknesses().stream())
          .limit(1)
          .map(known -> doubt(cores.get(0), lacking, known));
    }

    private static boolean isProbed(Track core, Passage piece) {
      return core.piece().isStated()
          && core.piece().passages().size() == 1
          && core.piece().passages().get(0).isOf(piece);
    }

    /** About a probe, since that shows nothing for certain of the others. */
    private static Doubt doubt(Track core, List<String> lacking, Entry known) {
      return new Doubt(
          core.origin(),
          say(
              "doubt.unmeasured.found",
              "no thickness of {0}, beside one of {1} ({2})",
              Listing.commas(lacking),
              known.shown(),
              known.place()),
          say(
              "doubt.unmeasured.expected",
              "the thickness of every piece and lot of one probe, where one is written"),
          say(
              "do.piece-without-a-thickness",
              "Write how thick the others are, or say what shows that they are no thicker."));
    }
  }
}

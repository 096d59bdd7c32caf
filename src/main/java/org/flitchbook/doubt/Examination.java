package org.flitchbook.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;

/**
 * One look at one lot: first what is no reading is left out, then the rules look at the rest, then
 * what people said of it is heard, and at last what is left is looked at as a whole.
 */
final class Examination {

  private final Subject whole;
  private final List<Fault> others;
  private List<Fault> faults = new ArrayList<>();
  private Lot lot;

  Examination(Subject whole, List<Fault> others) {
    this.others = others;
    this.whole = whole;
    this.lot = whole.lot();
  }

  Examined examined() {
    Optional<Explanations> said =
        whole.rule(Explaining.NAME).map(rule -> new Explanations(rule, whole));
    Doubts.EXCLUDING.forEach(this::exclude);
    faults.addAll(found(Doubts.FINDERS));
    faults.addAll(others);
    List<Fault> own = heard(said, lot.faults());
    faults = new ArrayList<>(heard(said, faults));
    Stream.concat(own.stream(), List.copyOf(faults).stream()).forEach(this::excludeExplained);
    faults.addAll(heard(said, found(Doubts.LAST)));
    said.ifPresent(each -> faults.addAll(each.faults()));
    return new Examined(lot.with(own), faults);
  }

  private static List<Fault> heard(Optional<Explanations> said, List<Fault> found) {
    return said.map(each -> each.applied(found)).orElse(found);
  }

  private List<Fault> found(List<Finder> finders) {
    Subject subject = whole.of(lot);
    return finders.stream()
        .flatMap(
            finder ->
                subject.rule(finder.name()).stream()
                    .flatMap(rule -> finder.find(rule, subject).stream()))
        .toList();
  }

  private void exclude(Finder finder) {
    List<Fault> found = found(List.of(finder));
    found.forEach(fault -> fault.stretch().ifPresent(each -> leaveOut(each, fault.rule())));
    faults.addAll(found);
  }

  /** Where evidence bears out that the readings were wrong. */
  private void excludeExplained(Fault fault) {
    fault
        .explained()
        .filter(Explained::isBorneOut)
        .filter(said -> said.choice().equals(Optional.of(Explained.Choice.EXCLUDED)))
        .flatMap(said -> fault.stretch())
        .ifPresent(stretch -> leaveOut(stretch, fault.rule()));
  }

  /** A probe without any reading left must not leave the verdict to the others. */
  private void leaveOut(Stretch stretch, String why) {
    Lot rest = lot.without(stretch, why);
    if (rest.tracks().size() < lot.tracks().size()) {
      Track gone =
          lot.tracks().stream()
              .map(Lot.StepTrack::track)
              .filter(track -> track.origin().equals(stretch.origin()))
              .findFirst()
              .orElseThrow();
      faults.add(
          Fault.stop(
              "no reading left",
              lot.code(),
              Place.of(stretch.origin().file()),
              whole.say(
                  "doubt.none-left.found",
                  "no reading of {0} that may be believed",
                  whole.probe(gone)),
              whole.say(
                  "doubt.none-left.expected", "readings of every probe that was in the lot")));
    }
    lot = rest;
  }
}

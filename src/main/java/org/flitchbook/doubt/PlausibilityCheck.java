package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.input.Explained;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.Severity;
import org.flitchbook.input.Stretch;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Language;

/**
 * One look at one lot: first what is no reading is left out, then the rules look at the rest, then
 * what people said of it is heard, and at last what is left is looked at as a whole.
 */
final class PlausibilityCheck {

  /** They look at what is left once people have said which readings are wrong. */
  private static final List<Class<?>> FINAL = List.of(ReWarming.class, FinalRule.class);

  private final Subject whole;
  private final Optional<Explanations> said;
  private List<Fault> faults = new ArrayList<>();
  private Lot lot;

  PlausibilityCheck(Subject whole, Language language) {
    this.whole = whole;
    this.said =
        whole
            .rules(Explanations.Explanation.class)
            .findFirst()
            .map(rule -> new Explanations(rule, whole, language));
    this.lot = whole.lot();
  }

  Doubts.Result result(List<Fault> others) {
    rules(ExcludingRule.class).forEach(this::exclude);
    Arrays.stream(Finder.class.getPermittedSubclasses())
        .filter(kind -> kind != ExcludingRule.class && !FINAL.contains(kind))
        .flatMap(this::rules)
        .flatMap(this::found)
        .forEach(faults::add);
    faults.addAll(others);
    List<Fault> own = heard(lot.faults());
    faults = new ArrayList<>(heard(faults));
    Stream.concat(own.stream(), List.copyOf(faults).stream()).forEach(this::excludeExplained);
    faults.addAll(heard(FINAL.stream().flatMap(this::rules).flatMap(this::found).toList()));
    lot = lot.with(own);
    return result();
  }

  /** The faults so far, and those of explanations that nothing of them asked for. */
  private Doubts.Result result() {
    List<Fault> idle = said.map(Explanations::faults).orElse(List.of());
    return new Doubts.Result(
        lot, Stream.concat(faults.stream(), idle.stream()).toList(), this::unused);
  }

  /** With the rows that no finding used, and about which nothing was said yet. */
  private Doubts.Result unused(Set<Place> used) {
    Set<Place> known =
        Stream.concat(
                used.stream(),
                Stream.concat(lot.faults().stream(), faults.stream())
                    .filter(fault -> !fault.is(Severity.NOTE))
                    .map(fault -> Place.of(fault.place().file(), fault.place().line())))
            .collect(Collectors.toUnmodifiableSet());
    faults.addAll(
        heard(
            whole
                .rules(RowNotUsed.class)
                .flatMap(
                    rule ->
                        ((RowNotUsed) rule.numbers())
                            .find(whole.of(lot), known)
                            .map(doubt -> rule.fault(lot.code(), doubt)))
                .toList()));
    return result();
  }

  /** The rules of a kind, in the order in which it permits them. */
  private Stream<Rule> rules(Class<?> kind) {
    return kind.isRecord()
        ? whole.rules(kind)
        : Arrays.stream(kind.getPermittedSubclasses()).flatMap(this::rules);
  }

  private List<Fault> heard(List<Fault> found) {
    return said.map(each -> each.applied(found)).orElse(found);
  }

  private Stream<Fault> found(Rule rule) {
    return ((Finder) rule.numbers())
        .find(whole.of(lot))
        .map(doubt -> rule.fault(lot.code(), doubt));
  }

  private void exclude(Rule rule) {
    List<Fault> found = found(rule).toList();
    found.forEach(fault -> fault.stretch().ifPresent(each -> leaveOut(each, fault.rule())));
    faults.addAll(found);
  }

  /** Where evidence bears out that the readings were wrong. */
  private void excludeExplained(Fault fault) {
    fault
        .explained()
        .filter(Explained::isBorneOut)
        .filter(explained -> explained.choice().equals(Optional.of(Explained.Choice.EXCLUDED)))
        .flatMap(explained -> fault.stretch())
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
              say(
                  "doubt.none-left.found",
                  "no reading of {0} that may be believed",
                  Subject.probe(gone)),
              say("doubt.none-left.expected", "readings of every probe that was in the lot")));
    }
    lot = rest;
  }
}

package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Seat;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/** What rows say of single pieces and of their surfaces. */
sealed interface PieceRule extends Finder
    permits PieceRule.NamedOnce, PieceRule.NotCovered, PieceRule.NotTacky {

  /**
   * A piece that one row alone names, while no other row of that word names any piece: most likely
   * mistyped, or of another lot.
   */
  @Choice("piece named once")
  record NamedOnce() implements PieceRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      Set<String> logged =
          subject.lot().logs().stream()
              .flatMap(log -> log.seat().stream())
              .map(Seat::piece)
              .collect(Collectors.toSet());
      return subject.lot().entries().stream()
          .filter(entry -> !entry.piece().isEmpty() && !logged.contains(entry.piece()))
          .collect(Collectors.groupingBy(Entry::piece))
          .values()
          .stream()
          .filter(entries -> entries.size() == 1)
          .map(entries -> entries.get(0))
          .filter(entry -> isAlone(subject, entry))
          .map(NamedOnce::doubt);
    }

    private static boolean isAlone(Subject subject, Entry entry) {
      return subject.lot().all(entry.what()).stream()
          .allMatch(other -> other.piece().isEmpty() || other.equals(entry));
    }

    private static Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("piece"),
          say("doubt.piece-once.found", "piece {0}, which no other row names", entry.piece()),
          say("doubt.piece-once.expected", "a piece that was weighed and that other rows name too"),
          say("do.piece-named-once", "Correct the piece, or write the rows that it lacks."));
    }
  }

  /**
   * Surfaces that were not covered with cure all over.
   *
   * @param said the words with which a row begins that says they were
   * @param not the words with which it takes that back
   */
  @Choice("surfaces not covered")
  record NotCovered(List<String> said, List<String> not) implements PieceRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().all(What.SURFACES_COVERED).stream()
          .filter(entry -> !isCovered(words(entry)))
          .map(NotCovered::doubt);
    }

    private boolean isCovered(List<String> words) {
      return said.contains(words.get(0)) && words.stream().noneMatch(not::contains);
    }

    private static List<String> words(Entry entry) {
      return List.of(entry.value().toLowerCase(Locale.ROOT).split("[^\\p{L}]+"));
    }

    private static Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("value"),
          say("doubt.covered.found", "{0}: {1}", entry.what(), entry.value()),
          say("doubt.covered.expected", "\"all\""),
          say(
              "do.surfaces-not-covered",
              "Rub what was left out, and write that; or say why it may stay so."));
    }
  }

  /** The surface was last found wet, and the lot came out of the drying. */
  @Choice("surface not tacky")
  record NotTacky() implements PieceRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.endOf(Step.DRY).isEmpty()
          ? Stream.empty()
          : last(subject.lot().all(What.SURFACE).stream()).stream()
              .filter(entry -> entry.value().equalsIgnoreCase("wet"))
              .map(NotTacky::doubt);
    }

    private static Optional<Entry> last(Stream<Entry> entries) {
      return entries.reduce((earlier, later) -> later);
    }

    private static Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("value"),
          say("doubt.tacky.found", "{0}: {1}, and out of the drying", entry.what(), entry.value()),
          say("doubt.tacky.expected", "a tacky surface before it goes on"),
          say(
              "do.surface-not-tacky",
              "Dry on before the smoke; a wet surface takes smoke badly and dries unevenly."));
    }
  }
}

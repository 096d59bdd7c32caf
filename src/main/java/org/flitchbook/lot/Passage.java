package org.flitchbook.lot;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Step;
import org.flitchbook.sheet.What;

/**
 * The way of one piece through smoke and chill, as it was written.
 *
 * @param piece empty where nobody names a piece of the lot
 * @param events when it went in and came out, in any order
 * @param thicknesses how thick it was, as often as that was written
 */
public record Passage(String lot, String piece, List<Entry> events, List<Entry> thicknesses) {

  public Passage {
    events = List.copyOf(events);
    thicknesses = List.copyOf(thicknesses);
  }

  /** {@code 26048-B2 a}, or the lot alone. */
  public String called() {
    return piece.isEmpty() ? lot : lot + " " + piece;
  }

  public boolean isOf(Passage other) {
    return lot.equals(other.lot()) && piece.equals(other.piece());
  }

  /** Those of all pieces of a lot; of one without a name where none has one. */
  public static List<Passage> all(String lot, List<Entry> entries) {
    List<String> named =
        entries.stream()
            .filter(entry -> entry.lot().equals(lot))
            .map(Entry::piece)
            .filter(piece -> !piece.isEmpty())
            .distinct()
            .sorted()
            .toList();
    Stream<String> pieces = named.isEmpty() ? Stream.of("") : named.stream();
    return pieces.map(piece -> of(lot, piece, entries)).toList();
  }

  /** A row without a piece is of all of them. */
  static Passage of(String lot, String piece, List<Entry> entries) {
    List<Entry> own =
        entries.stream()
            .filter(entry -> entry.lot().equals(lot))
            .filter(entry -> entry.piece().isEmpty() || entry.piece().equals(piece))
            .toList();
    return new Passage(
        lot,
        piece,
        own.stream().filter(Passage::isOfTheHeat).toList(),
        own.stream().filter(entry -> entry.is(What.THICKNESS)).toList());
  }

  private static boolean isOfTheHeat(Entry entry) {
    return Stream.of(Step.SMOKE, Step.CHILL)
        .anyMatch(step -> entry.is(step.into()) || entry.is(step.outOf()));
  }

  /**
   * What either of two went through and the other did not: an event without its like of the other.
   *
   * @param within two events that are alike may be so far apart
   * @param until what happened later than so long before this time counts for nothing
   */
  public Optional<Entry> apartFrom(Passage other, Duration within, Instant until) {
    return Stream.concat(lonely(this, other, within), lonely(other, this, within))
        .filter(event -> event.time().earliest().plus(within).isBefore(until))
        .findFirst();
  }

  private static Stream<Entry> lonely(Passage one, Passage other, Duration within) {
    return one.events().stream()
        .filter(event -> other.events().stream().noneMatch(each -> isLike(event, each, within)));
  }

  private static boolean isLike(Entry event, Entry other, Duration within) {
    boolean goesIn = event.is(Step.SMOKE.into()) || event.is(Step.CHILL.into());
    return event.what() == other.what()
        && (!goesIn || event.item().equals(other.item()))
        && Duration.between(event.time().earliest(), other.time().earliest())
                .abs()
                .compareTo(within)
            <= 0;
  }
}

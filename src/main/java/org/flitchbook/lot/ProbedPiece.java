package org.flitchbook.lot;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.reading.Entry;
import org.flitchbook.reading.Seat;
import org.flitchbook.sheet.What;

/**
 * What is known of the piece that a probe sat in.
 *
 * @param isStated whether anybody wrote which piece it was
 * @param thickness the least that it can have been thick; empty where none that it can have been
 *     was measured
 */
public record ProbedPiece(boolean isStated, Optional<Quantity> thickness) {

  /** Of a probe that reads no core. */
  static final ProbedPiece NONE = new ProbedPiece(false, Optional.empty());

  /**
   * @param entries of all lots
   * @param seat as it was stated; where it was not, it may have been any piece of the lots
   */
  static ProbedPiece of(List<Entry> entries, List<String> lots, Optional<Seat> seat) {
    List<String> in = seat.map(Seat::lot).map(List::of).orElse(lots);
    String piece = seat.map(Seat::piece).orElse("");
    return new ProbedPiece(
        seat.isPresent(),
        entries.stream()
            .filter(entry -> entry.is(What.THICKNESS) && in.contains(entry.lot()))
            .filter(entry -> piece.isEmpty() || piece.equals(entry.piece()))
            .map(Entry::amount)
            .min(Comparator.naturalOrder()));
  }

  /** Of readings by hand, which were all taken of one piece or are taken for those of any. */
  static ProbedPiece ofHand(List<Entry> entries, List<HandReading> hands) {
    String lot = hands.get(0).entry().lot();
    List<String> pieces = hands.stream().map(hand -> hand.entry().piece()).distinct().toList();
    boolean isStated = pieces.size() == 1 && !pieces.get(0).isEmpty();
    return of(
        entries,
        List.of(lot),
        isStated ? Optional.of(new Seat(lot, pieces.get(0))) : Optional.empty());
  }
}

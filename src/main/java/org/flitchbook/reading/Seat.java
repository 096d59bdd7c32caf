package org.flitchbook.reading;

import java.util.List;
import java.util.Optional;

/**
 * Where a probe sat, as {@code logs.json} states it.
 *
 * @param piece empty where the lot is one piece, or where only the lot is stated
 */
public record Seat(String lot, String piece) {

  /**
   * Of a column that serves one lot its piece; of one that serves several the lot, and behind a
   * space its piece.
   *
   * @return empty where none of the lots is named
   */
  static Optional<Seat> of(String text, List<String> lots) {
    if (lots.size() == 1) {
      return Optional.of(new Seat(lots.get(0), text));
    }
    String[] parts = text.strip().split("\\s+", 2);
    return lots.contains(parts[0])
        ? Optional.of(new Seat(parts[0], parts.length == 1 ? "" : parts[1]))
        : Optional.empty();
  }
}

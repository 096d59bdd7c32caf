package org.flitchbook.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Base;

/** The pieces of a lot, and what each of them weighs without its rind. */
final class Pieces {

  private final JudgedLot judged;

  Pieces(JudgedLot judged) {
    this.judged = judged;
  }

  /** Those that were weighed or cured by themselves; one without a name where none was. */
  List<String> names() {
    TreeSet<String> pieces = new TreeSet<>();
    for (Entry entry : judged.lot().entries()) {
      if (entry.is(What.GREEN_WEIGHT) || entry.is(What.CURING_SALT)) {
        pieces.add(entry.piece());
      }
    }
    return pieces.isEmpty() ? List.of("") : List.copyOf(pieces);
  }

  /** An entry for no piece is for all of them; of a lot that is not in pieces every one counts. */
  static boolean isOf(Entry entry, String piece) {
    return piece.isEmpty() || entry.piece().isEmpty() || entry.piece().equals(piece);
  }

  /** The skin-free mass of all pieces; empty where one of them is not known. */
  Optional<Quantity> massOfAll() {
    List<Quantity> masses = new ArrayList<>();
    for (String piece : names()) {
      skinFree(piece).flatMap(SkinFree::base).map(Base::mass).ifPresent(masses::add);
    }
    if (masses.size() < names().size()) {
      return Optional.empty();
    }
    Ratio grams = masses.stream().map(Quantity::inBase).reduce(Ratio.ZERO, Ratio::plus);
    return Optional.of(masses.size() == 1 ? masses.get(0) : new Quantity(grams, Unit.GRAM));
  }

  /** Empty where the piece was not weighed. */
  private Optional<SkinFree> skinFree(String piece) {
    return of(What.GREEN_WEIGHT, piece).stream().findFirst().map(green -> skinFree(green, piece));
  }

  SkinFree skinFree(Entry green, String piece) {
    return SkinFree.of(
        green, of(What.RIND, piece), of(What.RIND_WEIGHT, piece), judged.product().rindShare());
  }

  /** Whether some piece's rind was not weighed, so that a share was taken off for it. */
  boolean isRindEstimated() {
    return names().stream()
        .flatMap(piece -> skinFree(piece).stream())
        .anyMatch(SkinFree::isEstimated);
  }

  /** The entries about something for one piece, those without a piece included. */
  List<Entry> of(What what, String piece) {
    return judged.lot().all(what).stream()
        .filter(entry -> entry.piece().isEmpty() || entry.piece().equals(piece))
        .toList();
  }
}

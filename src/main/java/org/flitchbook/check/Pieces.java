package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Base;

/** The pieces of a lot, and what each of them weighs without its rind. */
record Pieces(JudgedLot judged) {

  /** Those that were weighed or cured by themselves; one without a name where none was. */
  List<String> names() {
    List<String> names =
        judged.lot().entries().stream()
            .filter(entry -> entry.is(What.GREEN_WEIGHT) || entry.is(What.CURING_SALT))
            .map(Entry::piece)
            .distinct()
            .sorted()
            .toList();
    return names.isEmpty() ? List.of("") : names;
  }

  /** An entry for no piece is for all of them; of a lot that is not in pieces every one counts. */
  static boolean isOf(Entry entry, String piece) {
    return piece.isEmpty() || entry.piece().isEmpty() || entry.piece().equals(piece);
  }

  /** The skin-free mass of all pieces; empty where one of them is not known. */
  Optional<Quantity> massOfAll() {
    List<String> names = names();
    List<Quantity> masses =
        names.stream()
            .flatMap(piece -> skinFree(piece).flatMap(SkinFree::base).map(Base::mass).stream())
            .toList();
    Ratio grams = masses.stream().map(Quantity::inBase).reduce(Ratio.ZERO, Ratio::plus);
    return Optional.of(masses.size() == 1 ? masses.get(0) : new Quantity(grams, Unit.GRAM))
        .filter(sum -> masses.size() == names.size());
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

  Optional<Entry> first(What what, String piece) {
    return of(what, piece).stream().findFirst();
  }

  private Optional<SkinFree> skinFree(String piece) {
    return first(What.GREEN_WEIGHT, piece).map(green -> skinFree(green, piece));
  }

  /** The base of a piece by what its rind was when it was weighed. */
  SkinFree skinFree(Entry green, String piece) {
    List<Entry> stated = of(What.RIND, piece);
    Optional<Entry> before =
        stated.stream()
            .filter(entry -> !green.time().isBefore(entry.time()))
            .reduce((earlier, later) -> later);
    if (before.isEmpty()) {
      return SkinFree.without(notStated(stated), List.of());
    }
    List<Place> evidence = List.of(before.get().place());
    if (before.get().value().equalsIgnoreCase("off")) {
      return SkinFree.of(Base.skinFree(green.amount()), Optional.empty(), evidence);
    }
    List<Entry> weighed = of(What.RIND_WEIGHT, piece);
    return weighed.isEmpty()
        ? lessShare(green, evidence)
        : lessRind(green, weighed.get(weighed.size() - 1), evidence);
  }

  private SkinFree lessShare(Entry green, List<Place> evidence) {
    return judged
        .product()
        .rindShare()
        .map(known -> Base.lessShare(green.amount(), known.value()))
        .map(base -> SkinFree.of(base, Optional.empty(), evidence))
        .orElseGet(
            () ->
                SkinFree.without(
                    say(
                        "check.rind.not-weighed",
                        "weighed with the rind on, the rind not weighed, and no rule set gives a"
                            + " share"),
                    evidence));
  }

  private static SkinFree lessRind(Entry green, Entry rind, List<Place> stated) {
    List<Place> evidence = Stream.concat(stated.stream(), Stream.of(rind.place())).toList();
    return rind.amount().isBelow(green.amount())
        ? SkinFree.of(Base.lessRind(green.amount(), rind.amount()), Optional.of(rind), evidence)
        : SkinFree.without(
            say("check.rind.too-heavy", "the rind weighs as much as the whole piece"), evidence);
  }

  private static Message notStated(List<Entry> stated) {
    return stated.isEmpty()
        ? say(
            "check.rind.not-stated",
            "no \"rind\" entry says whether the green weight was taken without the rind")
        : say(
            "check.rind.stated-late",
            "\"rind {0}\" was stated after the green weight was taken",
            stated.get(0).value());
  }

  /**
   * The skin-free base of one piece.
   *
   * @param base empty where the entries don't say it
   * @param off the weighing of the rind, where it was taken off
   * @param lacks why there is no base
   */
  record SkinFree(
      Optional<Base> base, Optional<Entry> off, Optional<Message> lacks, List<Place> evidence) {

    private static SkinFree of(Base base, Optional<Entry> off, List<Place> evidence) {
      return new SkinFree(Optional.of(base), off, Optional.empty(), evidence);
    }

    private static SkinFree without(Message reason, List<Place> evidence) {
      return new SkinFree(Optional.empty(), Optional.empty(), Optional.of(reason), evidence);
    }

    /** Whether a share was taken off for a rind that nobody weighed. */
    boolean isEstimated() {
      return off.isEmpty() && base.filter(Base::hasRind).isPresent();
    }
  }
}

package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.CureMethod;
import org.flitchbook.plan.CureMethod.Into;
import org.flitchbook.plan.CureMethod.Way;
import org.flitchbook.plan.Figure;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Base;
import org.flitchbook.sums.Dose;
import org.flitchbook.sums.Sums;
import org.flitchbook.sums.Worked;

/**
 * The sums of the cure, each piece by its own weighing. A sum that lacks a number is not made: the
 * reason comes back instead.
 */
final class Curing {

  private final Case judged;
  private final Strength strength;

  Curing(Case judged) {
    this(judged, Optional.empty());
  }

  /**
   * The sums as one limit counts them.
   *
   * @param potassium as {@link org.flitchbook.plan.Kind.Bound#potassium}
   */
  Curing(Case judged, Optional<Ratio> potassium) {
    this.judged = judged;
    this.strength = new Strength(judged.plan(), potassium);
  }

  /**
   * One piece's sum, or why there is none.
   *
   * @param lacks why there is none
   * @param uncertainty what the scales can prove, where their steps are known
   */
  record Ingoing(
      String piece,
      Optional<Worked> worked,
      Optional<Message> lacks,
      List<Place> evidence,
      Optional<Quantity> uncertainty) {

    static Ingoing without(String piece, Message lacks, List<Place> evidence) {
      return new Ingoing(piece, Optional.empty(), Optional.of(lacks), evidence, Optional.empty());
    }

    Ingoing proved(Optional<Quantity> half) {
      return new Ingoing(piece, worked, lacks, evidence, half);
    }
  }

  /** The pieces that were weighed or cured by themselves; one without a name where none was. */
  List<String> pieces() {
    TreeSet<String> pieces = new TreeSet<>();
    for (Entry entry : judged.lot().entries()) {
      if (entry.is(What.GREEN_WEIGHT) || entry.is(What.CURING_SALT)) {
        pieces.add(entry.piece());
      }
    }
    return pieces.isEmpty() ? List.of("") : List.copyOf(pieces);
  }

  List<Ingoing> ingoing(Figure figure) {
    return pieces().stream().map(piece -> ingoing(figure, piece)).toList();
  }

  private Ingoing ingoing(Figure figure, String piece) {
    List<Place> evidence = new ArrayList<>();
    Optional<Entry> green = of(What.GREEN_WEIGHT, piece).stream().findFirst();
    if (green.isEmpty()) {
      return Ingoing.without(
          piece, ofPiece(say("check.cure.no-green-weight", "no green weight"), piece), evidence);
    }
    evidence.add(green.get().place());
    Rind rind = rind(green.get(), piece);
    evidence.addAll(rind.evidence());
    List<Entry> cures = cures(figure, piece);
    cures.forEach(cure -> evidence.add(cure.place()));
    if (rind.lacks().isPresent()) {
      return Ingoing.without(piece, rind.lacks().get(), evidence);
    }
    if (of(What.CURING_SALT, piece).isEmpty()) {
      return Ingoing.without(
          piece, ofPiece(say("check.cure.no-salt", "no curing salt was weighed"), piece), evidence);
    }
    Ingoing summed = summed(figure, piece, rind.base().orElseThrow(), cures, evidence);
    List<Entry> meat = weighed(green.get(), piece);
    return summed.worked().isEmpty() || meat.isEmpty()
        ? summed
        : summed.proved(
            new Scales(judged.plan(), strength)
                .prove(summed.worked().get(), figure, cures, meat, rind.off()));
  }

  private static Message ofPiece(Message told, String piece) {
    return piece.isEmpty() ? told : say("check.of-piece", "{0} of piece {1}", told, piece);
  }

  /**
   * What the sum of the cure is made on, weighing by weighing; nothing where a share that was
   * pumped or taken up is a factor of the sum, since no scale shows what that is worth.
   */
  private List<Entry> weighed(Entry green, String piece) {
    CureMethod method = judged.product().cureMethod();
    if (method.ways().stream().allMatch(way -> way.into() == Into.MEAT)) {
      return List.of(green);
    }
    List<Entry> pickle = of(What.PICKLE, piece);
    boolean isAtRest = method.is(Way.IMMERSION) && of(What.PICK_UP, piece).isEmpty();
    return isAtRest && !pickle.isEmpty() ? List.of(green, pickle.get(0)) : List.of();
  }

  private Ingoing summed(
      Figure figure, String piece, Base base, List<Entry> cures, List<Place> evidence) {
    Optional<Entry> unknown =
        cures.stream().filter(cure -> strength.of(figure, cure).isEmpty()).findFirst();
    if (unknown.isPresent()) {
      return Ingoing.without(piece, strength.unknown(figure, unknown.get()), evidence);
    }
    List<Way> ways = judged.product().cureMethod().ways();
    Optional<Entry> lost =
        cures.stream().filter(cure -> ways.size() > 1 && into(cure).isEmpty()).findFirst();
    if (lost.isPresent()) {
      return Ingoing.without(
          piece,
          say(
              "check.cure.no-way",
              "the column \"way\" does not say whether the {0} at {1} went into the pickle or onto"
                  + " the meat",
              lost.get().what(),
              lost.get().place()),
          evidence);
    }
    return together(figure, piece, base, cures, evidence);
  }

  /** Where a cure of a piece with two methods went. */
  private static Optional<Into> into(Entry cure) {
    return Into.parse(cure.other().getOrDefault("way", ""));
  }

  /**
   * Two methods on one piece add up (FSIS Directive 7620.3 p. 33; the rule for putting them
   * together is from memory, the strict side).
   */
  private Ingoing together(
      Figure figure, String piece, Base base, List<Entry> cures, List<Place> evidence) {
    List<Way> ways = judged.product().cureMethod().ways();
    List<Worked> parts = new ArrayList<>();
    for (Way way : ways) {
      List<Entry> own =
          ways.size() == 1
              ? cures
              : cures.stream().filter(cure -> into(cure).equals(Optional.of(way.into()))).toList();
      Optional<Worked> part = by(way, piece, base, doses(figure, own), evidence);
      if (part.isEmpty()) {
        return Ingoing.without(piece, ofPiece(lacks(piece), piece), evidence);
      }
      parts.add(onBasis(figure, part.get()));
    }
    return new Ingoing(
        piece, Optional.of(Sums.added(parts)), Optional.empty(), evidence, Optional.empty());
  }

  private List<Dose> doses(Figure figure, List<Entry> cures) {
    List<Dose> doses = new ArrayList<>();
    for (Entry cure : cures) {
      doses.add(new Dose(cure.amount(), strength.of(figure, cure).orElseThrow()));
    }
    if (doses.isEmpty()) {
      doses.add(new Dose(Quantity.of(0, Unit.GRAM), Quantity.of(0, Unit.PERCENT)));
    }
    return doses;
  }

  private Message lacks(String piece) {
    return of(What.PICKLE, piece).isEmpty()
        ? say("check.cure.no-pickle-weight", "no weight of the pickle")
        : say("check.entry.none", "no \"{0}\" entry", What.PUMP);
  }

  /** One method's sum; empty where the pickle, or what was pumped of it, was not weighed. */
  private Optional<Worked> by(
      Way way, String piece, Base base, List<Dose> doses, List<Place> evidence) {
    if (way.into() == Into.MEAT) {
      return Optional.of(Sums.ingoingDry(doses, base));
    }
    Optional<Entry> pickle = of(What.PICKLE, piece).stream().findFirst();
    Optional<Entry> taken = way.takenUp().flatMap(what -> of(what, piece).stream().findFirst());
    pickle.ifPresent(entry -> evidence.add(entry.place()));
    taken.ifPresent(entry -> evidence.add(entry.place()));
    if (pickle.isEmpty() || (way.needsTakenUp() && taken.isEmpty())) {
      return Optional.empty();
    }
    Quantity weight = pickle.get().amount();
    return Optional.of(
        taken
            .map(entry -> Sums.ingoingTakenUp(doses, weight, entry.amount(), base))
            .orElseGet(() -> Sums.ingoingEquilibrium(doses, base, weight)));
  }

  /** As the limits on that figure are written: the ion as NO2, salt in %. */
  private static Worked onBasis(Figure figure, Worked worked) {
    return switch (figure) {
      case INGOING_NITRITE_ION -> Sums.asNitriteIon(worked);
      case INGOING_SALT -> Sums.inPercent(worked);
      default -> worked;
    };
  }

  /**
   * What brought the wanted substance in: the curing salt, for the accelerator its own, and for
   * salt the plain salt too.
   */
  private List<Entry> cures(Figure figure, String piece) {
    List<Entry> cures = new ArrayList<>(of(What.CURING_SALT, piece));
    if (figure == Figure.INGOING_ACCELERATOR) {
      cures.removeIf(
          cure -> strength.of(figure, cure).filter(share -> share.value().signum() > 0).isEmpty());
      cures.addAll(of(What.ACCELERATOR, piece));
    }
    if (figure == Figure.INGOING_SALT) {
      cures.addAll(of(What.SALT, piece));
    }
    return cures;
  }

  /** The skin-free mass of all pieces; empty where one of them is not known. */
  Optional<Quantity> massOfAll() {
    List<Quantity> masses = new ArrayList<>();
    for (String piece : pieces()) {
      Optional<Base> base =
          of(What.GREEN_WEIGHT, piece).stream()
              .findFirst()
              .flatMap(green -> rind(green, piece).base());
      if (base.isEmpty()) {
        return Optional.empty();
      }
      masses.add(base.get().mass());
    }
    Ratio grams = masses.stream().map(Quantity::inBase).reduce(Ratio.ZERO, Ratio::plus);
    return Optional.of(masses.size() == 1 ? masses.get(0) : new Quantity(grams, Unit.GRAM));
  }

  private Rind rind(Entry green, String piece) {
    return Rind.of(
        judged.product().rindShare(), green, of(What.RIND, piece), of(What.RIND_WEIGHT, piece));
  }

  /** Whether some piece's rind was not weighed, so that a share was taken off for it. */
  boolean isRindEstimated() {
    return pieces().stream()
        .anyMatch(
            piece ->
                of(What.GREEN_WEIGHT, piece).stream()
                    .findFirst()
                    .filter(green -> rind(green, piece).isEstimated())
                    .isPresent());
  }

  /** The entries about something for one piece, those without a piece included. */
  private List<Entry> of(What what, String piece) {
    return judged.lot().all(what).stream()
        .filter(entry -> entry.piece().isEmpty() || entry.piece().equals(piece))
        .toList();
  }
}

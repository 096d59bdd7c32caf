package org.flitchbook.check;

import static org.flitchbook.message.Message.say;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.input.Place;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Message;
import org.flitchbook.plan.CureMethod;
import org.flitchbook.plan.CureMethod.Into;
import org.flitchbook.plan.CureMethod.Way;
import org.flitchbook.plan.Figure;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;
import org.flitchbook.sums.Base;
import org.flitchbook.sums.Dose;
import org.flitchbook.sums.Sums;
import org.flitchbook.sums.Weighed;
import org.flitchbook.sums.Weighed.Weighing;
import org.flitchbook.sums.Worked;

/**
 * The sum of one figure of one piece's cure, by the piece's own weighings. A sum that lacks a
 * number is not made: the reason comes back instead.
 */
final class Curing {

  private static final Ratio TAKEN_OFF = Ratio.ONE.negate();

  private final JudgedLot judged;
  private final Figure figure;
  private final String piece;
  private final Pieces pieces;
  private final CureStrength strength;
  private final CureMethod method;
  private final List<Entry> cures;
  private final List<Place> evidence = new ArrayList<>();

  private Curing(JudgedLot judged, Figure figure, Optional<Ratio> potassium, String piece) {
    this.judged = judged;
    this.figure = figure;
    this.piece = piece;
    this.pieces = new Pieces(judged);
    this.strength = new CureStrength(judged.plan(), potassium);
    this.method = judged.product().cureMethod();
    this.cures = cures();
  }

  /**
   * The sums of all pieces as one limit calculates them.
   *
   * @param potassium as {@link org.flitchbook.plan.Kind.Bound#potassium}
   */
  static List<Ingoing> ingoing(JudgedLot judged, Figure figure, Optional<Ratio> potassium) {
    return new Pieces(judged)
        .names().stream()
            .map(piece -> new Curing(judged, figure, potassium, piece).ingoing())
            .toList();
  }

  /**
   * One piece's sum, or why there is none.
   *
   * @param uncertainty what the scales can prove, where their steps are known
   */
  record Ingoing(
      String piece,
      Optional<Worked> worked,
      Optional<Message> lacks,
      List<Place> evidence,
      Optional<Quantity> uncertainty) {}

  private Ingoing ingoing() {
    Optional<Entry> green = pieces.first(What.GREEN_WEIGHT, piece);
    if (green.isEmpty()) {
      return withoutOfPiece(say("check.cure.no-green-weight", "no green weight"));
    }
    evidence.add(green.get().place());
    Pieces.SkinFree skinFree = pieces.skinFree(green.get(), piece);
    evidence.addAll(skinFree.evidence());
    cures.forEach(cure -> evidence.add(cure.place()));
    if (skinFree.base().isEmpty()) {
      return without(skinFree.lacks().orElseThrow());
    }
    return pieces.of(What.CURING_SALT, piece).isEmpty()
        ? withoutOfPiece(say("check.cure.no-salt", "no curing salt was weighed"))
        : lacking()
            .map(this::without)
            .orElseGet(() -> onBase(skinFree.base().get(), weighed(green.get()), skinFree.off()));
  }

  private Ingoing without(Message lacks) {
    return new Ingoing(piece, Optional.empty(), Optional.of(lacks), evidence, Optional.empty());
  }

  private Ingoing withoutOfPiece(Message lacks) {
    return without(JudgedLot.ofPiece(lacks, piece));
  }

  private Optional<Message> lacking() {
    return cures.stream()
        .filter(cure -> strength.of(figure, cure).isEmpty())
        .findFirst()
        .map(cure -> strength.unknown(figure, cure))
        .or(
            () ->
                cures.stream()
                    .filter(cure -> method.ways().size() > 1 && into(cure).isEmpty())
                    .findFirst()
                    .map(Curing::withoutWay));
  }

  private static Message withoutWay(Entry cure) {
    return say(
        "check.cure.no-way",
        "the column \"way\" does not say whether the {0} at {1} went into the pickle or"
            + " onto the meat",
        cure.what(),
        cure.place());
  }

  /**
   * What the cure is calculated on, weighing by weighing; nothing where a share that was pumped or
   * taken up is a factor of the sum, since no scale shows what that is worth.
   */
  private List<Entry> weighed(Entry green) {
    if (method.ways().stream().allMatch(way -> way.into() == Into.MEAT)) {
      return List.of(green);
    }
    List<Entry> pickle = pieces.of(What.PICKLE, piece);
    boolean isAtRest = method.is(Way.IMMERSION) && pieces.of(What.PICK_UP, piece).isEmpty();
    return isAtRest && !pickle.isEmpty() ? List.of(green, pickle.get(0)) : List.of();
  }

  private Ingoing onBase(Base base, List<Entry> meat, Optional<Entry> rind) {
    Optional<Worked> worked = together(base);
    return worked
        .map(sum -> provable(sum.value(), meat, rind))
        .map(half -> new Ingoing(piece, worked, Optional.empty(), evidence, half))
        .orElseGet(() -> withoutOfPiece(lackingOfPickle()));
  }

  private Message lackingOfPickle() {
    return pieces.of(What.PICKLE, piece).isEmpty()
        ? say("check.cure.no-pickle-weight", "no weight of the pickle")
        : JudgedLot.noEntry(What.PUMP);
  }

  /**
   * Two methods on one piece add up (FSIS Directive 7620.3 p. 33; the rule for putting them
   * together is from memory, the strict side).
   */
  private Optional<Worked> together(Base base) {
    List<Worked> parts = new ArrayList<>();
    for (Way way : method.ways()) {
      Optional<Worked> part = by(way, base, doses(ownOf(way)));
      if (part.isEmpty()) {
        return part;
      }
      parts.add(onBasis(part.get()));
    }
    return Optional.of(Sums.added(parts));
  }

  private List<Entry> ownOf(Way way) {
    return method.ways().size() == 1
        ? cures
        : cures.stream().filter(cure -> into(cure).equals(Optional.of(way.into()))).toList();
  }

  private List<Dose> doses(List<Entry> own) {
    return own.isEmpty()
        ? List.of(new Dose(Quantity.of(0, Unit.GRAM), Quantity.of(0, Unit.PERCENT)))
        : own.stream()
            .map(cure -> new Dose(cure.amount(), strength.of(figure, cure).orElseThrow()))
            .toList();
  }

  /** One method's sum; empty where the pickle, or what was pumped of it, was not weighed. */
  private Optional<Worked> by(Way way, Base base, List<Dose> doses) {
    if (way.into() == Into.MEAT) {
      return Optional.of(Sums.ingoingDry(doses, base));
    }
    Optional<Entry> pickle = pieces.first(What.PICKLE, piece);
    Optional<Entry> taken = way.takenUp().flatMap(what -> pieces.first(what, piece));
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

  /** Where a cure of a piece with two methods went. */
  private static Optional<Into> into(Entry cure) {
    return Into.parse(cure.other().getOrDefault("way", ""));
  }

  /** As the limits on that figure are written: the ion as NO2, salt in %. */
  private Worked onBasis(Worked worked) {
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
  private List<Entry> cures() {
    List<Entry> cures = new ArrayList<>(pieces.of(What.CURING_SALT, piece));
    if (figure == Figure.INGOING_ACCELERATOR) {
      cures.removeIf(
          cure -> strength.of(figure, cure).filter(share -> share.value().signum() > 0).isEmpty());
      cures.addAll(pieces.of(What.ACCELERATOR, piece));
    }
    if (figure == Figure.INGOING_SALT) {
      cures.addAll(pieces.of(What.SALT, piece));
    }
    return cures;
  }

  /**
   * How far the sum may be off for all that the scales show, with k = 2: every weighing counts, the
   * strength of the cure is taken as exact.
   *
   * @param meat the weighings that the sum is made on; none where no scale can tell
   * @param rind the weighing of what was taken off the meat
   * @return in the unit of the sum; empty where a scale is not known, or nothing was weighed
   */
  private Optional<Quantity> provable(Quantity sum, List<Entry> meat, Optional<Entry> rind) {
    Optional<Weighed> cure =
        weighed(cures, each -> strength.of(figure, each).orElseThrow().inBase());
    Optional<Weighed> whole = weighed(meat, each -> Ratio.ONE);
    Optional<Weighed> base =
        rind.isEmpty() ? whole : whole.flatMap(before -> and(before, rind.get(), TAKEN_OFF));
    return cure.filter(salt -> salt.net().signum() > 0 && !meat.isEmpty())
        .flatMap(salt -> base.map(green -> proved(sum, salt, green)));
  }

  private static Quantity proved(Quantity sum, Weighed cure, Weighed meat) {
    return Sums.uncertainty(sum.in(Unit.PPM), cure, meat, Optional.empty()).in(sum.unit());
  }

  private Optional<Weighed> weighed(List<Entry> entries, Function<Entry, Ratio> factor) {
    Optional<Weighed> sum = Optional.of(Weighed.NOTHING);
    for (Entry each : entries) {
      sum = sum.flatMap(before -> and(before, each, factor.apply(each)));
    }
    return sum;
  }

  /** Nothing weighed brought nothing in, and no doubt either. */
  private Optional<Weighed> and(Weighed sum, Entry entry, Ratio factor) {
    return entry.amount().value().signum() == 0
        ? Optional.of(sum)
        : judged
            .plan()
            .instrument(entry.instrument())
            .flatMap(scale -> weighing(scale, entry.amount()))
            .map(weighing -> sum.and(weighing, factor));
  }

  private static Optional<Weighing> weighing(Instrument scale, Quantity mass) {
    return scale
        .readability(mass.unit())
        .map(
            step ->
                scale
                    .repeatability()
                    .map(scatter -> new Weighing(mass, step, scatter))
                    .orElseGet(() -> Weighing.of(mass, step)));
  }
}

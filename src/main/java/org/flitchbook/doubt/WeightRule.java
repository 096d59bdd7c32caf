package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.plan.CureMethod;
import org.flitchbook.plan.Ingredient;
import org.flitchbook.practice.Practice;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.Shape;
import org.flitchbook.sheet.What;

/** What was weighed. */
sealed interface WeightRule extends Finder
    permits WeightRule.FinerThanScale,
        WeightRule.CoarseScale,
        WeightRule.CureOutOfRange,
        WeightRule.UnweighedPiece,
        WeightRule.UnusualStrength {

  /** A weight between two steps of its scale was not read off it. */
  @Choice("finer than its scale")
  record FinerThanScale() implements WeightRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().entries().stream()
          .filter(entry -> entry.what().shape() == Shape.MASS)
          .flatMap(entry -> finer(subject, entry));
    }

    private static Stream<Doubt> finer(Subject subject, Entry entry) {
      return subject.scaleStep(entry).stream()
          .filter(step -> step.inBase().signum() > 0)
          .filter(step -> lastPlace(entry).isBelow(step))
          .filter(step -> !isMultiple(entry.amount(), step))
          .map(step -> doubt(entry, step));
    }

    private static Doubt doubt(Entry entry, Quantity step) {
      return new Doubt(
          entry.place().column("value"),
          say("doubt.finer.found", "{0} on {1}", entry.shown(), entry.instrument()),
          say("doubt.finer.expected", "a multiple of {0}", step.asWritten()),
          say("do.finer-than-its-scale", "Say which scale it was, or write what this one showed."));
    }

    /**
     * One in the last place written: 0.01 lb for 1.28 lb, which no scale of 0.01 g is too coarse
     * for.
     */
    private static Quantity lastPlace(Entry entry) {
      int mark = Math.max(entry.value().indexOf('.'), entry.value().indexOf(','));
      int places = mark < 0 ? 0 : entry.value().length() - mark - 1;
      return Quantity.of(BigDecimal.ONE.movePointLeft(places), entry.amount().unit());
    }

    private static boolean isMultiple(Quantity mass, Quantity step) {
      return mass.inBase().over(step.inBase()).denominator().equals(BigInteger.ONE);
    }
  }

  /**
   * Curing salt weighed on a scale whose step is a large share of it. One rule is lenient and one
   * is strict; they differ by their numbers.
   *
   * @param above the step may be this share of what was weighed
   * @param upTo of a larger share than this the rule says nothing
   */
  @Choice({CoarseScale.LENIENT, "scale too coarse"})
  record CoarseScale(
      String rule,
      @Key(dimension = Dimension.SHARE) Quantity above,
      @Key(dimension = Dimension.SHARE) Quantity upTo)
      implements WeightRule {

    static final String LENIENT = "scale coarse for its load";

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().entries().stream()
          .filter(entry -> entry.is(What.CURING_SALT) || entry.is(What.ACCELERATOR))
          .filter(entry -> entry.amount().value().signum() > 0)
          .flatMap(entry -> coarse(subject, entry).stream());
    }

    private Optional<Doubt> coarse(Subject subject, Entry entry) {
      return subject
          .scaleStep(entry)
          .map(step -> Subject.percent(step.inBase().over(entry.amount().inBase())))
          .filter(share -> share.isAbove(above) && !share.isAbove(upTo))
          .map(share -> doubt(entry, share));
    }

    private Doubt doubt(Entry entry, Quantity share) {
      return new Doubt(
          entry.place().column("instrument"),
          say(
              "doubt.coarse.found",
              "{0} on {1}, one step of which is {2} of it",
              entry.shown(),
              entry.instrument(),
              share),
          say("doubt.coarse.expected", "a scale whose step is at most {0}", above.asWritten()),
          rule.equals(LENIENT)
              ? say("do.scale-coarse-for-its-load", "Weigh the cure on a finer scale.")
              : say(
                  "do.scale-too-coarse",
                  "Say how the cure was weighed, and weigh it on a finer scale from now on."));
    }
  }

  /**
   * An amount of curing salt that is far off what a cure of its printed strength is used at:
   * another bag than the one written down, a decimal point, or a unit. A ready-mixed cure used at
   * the rate of a strong one passes every ceiling and cures nothing.
   *
   * @param strongFrom a strong cure has at least this share of sodium nitrite
   * @param strongTo and at most this
   * @param strongAtLeast and is used at least at this share of the green weight
   * @param strongAtMost and at most at this
   * @param readyMixFrom the same of a cure that is mixed with its salt
   */
  @Choice("curing salt out of its range")
  record CureOutOfRange(
      @Key(dimension = Dimension.SHARE) Quantity strongFrom,
      @Key(dimension = Dimension.SHARE) Quantity strongTo,
      @Key(dimension = Dimension.SHARE) Quantity strongAtLeast,
      @Key(dimension = Dimension.SHARE) Quantity strongAtMost,
      @Key(dimension = Dimension.SHARE) Quantity readyMixFrom,
      @Key(dimension = Dimension.SHARE) Quantity readyMixTo,
      @Key(dimension = Dimension.SHARE) Quantity readyMixAtLeast,
      @Key(dimension = Dimension.SHARE) Quantity readyMixAtMost)
      implements WeightRule {

    /** Cures of about one strength, and the share of the meat at which they are used. */
    private record Strength(Quantity from, Quantity to, Quantity atLeast, Quantity atMost) {

      boolean isOf(Ingredient cure) {
        return cure.sodiumNitrite().stream()
            .anyMatch(share -> !share.isBelow(from) && !share.isAbove(to));
      }
    }

    private List<Strength> strengths() {
      return List.of(
          new Strength(strongFrom, strongTo, strongAtLeast, strongAtMost),
          new Strength(readyMixFrom, readyMixTo, readyMixAtLeast, readyMixAtMost));
    }

    @Override
    public Stream<Doubt> find(Subject subject) {
      return subject.lot().product().stream()
          .filter(product -> product.cureMethod().is(CureMethod.Way.DRY))
          .flatMap(product -> subject.lot().all(What.GREEN_WEIGHT).stream())
          .filter(green -> green.amount().value().signum() > 0)
          .flatMap(
              green ->
                  strengths().stream().flatMap(strength -> out(subject, strength, green).stream()));
    }

    /** Several rows of one piece add up. */
    private Optional<Doubt> out(Subject subject, Strength strength, Entry green) {
      List<Entry> cures =
          subject.lot().all(What.CURING_SALT).stream()
              .filter(cure -> cure.piece().isEmpty() || cure.piece().equals(green.piece()))
              .filter(
                  cure -> subject.plan().ingredient(cure.item()).filter(strength::isOf).isPresent())
              .toList();
      Ratio cure =
          cures.stream().map(each -> each.amount().inBase()).reduce(Ratio.ZERO, Ratio::plus);
      Quantity share = Subject.percent(cure.over(green.amount().inBase()));
      boolean isOut = share.isBelow(strength.atLeast()) || share.isAbove(strength.atMost());
      return cures.stream()
          .filter(each -> isOut)
          .reduce((earlier, later) -> later)
          .map(last -> doubt(strength, last, share));
    }

    private Doubt doubt(Strength strength, Entry last, Quantity share) {
      return new Doubt(
          last.place().column("value"),
          say("doubt.cure.found", "{0} of the green weight, of lot {1}", share, last.item()),
          say(
              "doubt.cure.expected",
              "{0} to {1} of a cure of its strength",
              strength.atLeast().asWritten(),
              strength.atMost().asWritten()),
          say(
              "do.curing-salt-out-of-its-range",
              "Do not rub it in; read the bag's printed strength again, weigh again, and correct"
                  + " the entry."));
    }
  }

  /**
   * Cure for one piece of a lot that was weighed, but not piece by piece: on the weight of the
   * whole lot it looks like little.
   */
  @Choice("cure for an unweighed piece")
  record UnweighedPiece() implements WeightRule {

    private static final Set<What> CURES = Set.of(What.CURING_SALT, What.ACCELERATOR, What.SALT);

    @Override
    public Stream<Doubt> find(Subject subject) {
      Set<String> weighed =
          subject.lot().all(What.GREEN_WEIGHT).stream()
              .map(Entry::piece)
              .collect(Collectors.toSet());
      return subject.lot().entries().stream()
          .filter(entry -> CURES.contains(entry.what()) && !entry.piece().isEmpty())
          .filter(entry -> !weighed.isEmpty() && !weighed.contains(entry.piece()))
          .map(UnweighedPiece::doubt);
    }

    private static Doubt doubt(Entry entry) {
      return new Doubt(
          entry.place().column("piece"),
          say(
              "doubt.unweighed.found",
              "{0} of {1} for piece {2}, whose green weight nobody wrote",
              entry.what(),
              entry.shown(),
              entry.piece()),
          say("doubt.unweighed.expected", "the green weight of a piece that has its own cure"),
          say(
              "do.cure-for-an-unweighed-piece",
              "Write what this piece weighed, or correct the piece."));
    }
  }

  /**
   * Curing salt whose stated strength is not that of a cure for a day's use, with nothing named
   * that bears it out. A decimal point in the plan makes each sum with it wrong, and none of them
   * odd.
   */
  @Choice("strength without its label")
  record UnusualStrength() implements WeightRule {

    @Override
    public Stream<Doubt> find(Subject subject) {
      Practice.DayCure usual = subject.plan().practice().dayCure();
      return subject.lot().all(What.CURING_SALT).stream()
          .filter(entry -> entry.amount().value().signum() > 0)
          .flatMap(
              entry ->
                  subject.plan().ingredient(entry.item()).stream()
                      .filter(cure -> cure.lacksLabel(usual))
                      .map(cure -> doubt(entry, cure, usual)));
    }

    private static Doubt doubt(Entry entry, Ingredient cure, Practice.DayCure usual) {
      return new Doubt(
          entry.place().column("item"),
          say(
              "doubt.strength.found",
              "{0}, with {1} nitrite by the plan",
              cure.lot(),
              cure.nitrite()),
          say(
              "doubt.strength.expected",
              "{0} to {1} nitrite, or what bears out another strength",
              usual.from().asWritten(),
              usual.to().asWritten()),
          say(
              "do.strength-without-its-label",
              "Read the strength off the bag again, and name its label under \"support\" of this"
                  + " ingredient in the plan."));
    }
  }
}

package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.json.Format;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.sheet.What;

/**
 * How a product is cured.
 *
 * @param ways one, or two on the same piece, of which one goes by the pickle and one does not: the
 *     column {@code way} of a sheet tells their cures apart by that alone
 */
public record CureMethod(List<Way> ways) implements Argument {

  /** Only so that the other keys of a product without a known method are looked at too. */
  static final CureMethod ANY = new CureMethod(List.of(Way.DRY));

  /** As plans and templates write it. */
  static final Format<CureMethod> FORMAT =
      Format.choice(
          say(
              "plan.cure-method",
              "dry, comminuted, pumped, immersion, or one of the last two with one of the first"),
          all(),
          CureMethod::word);

  /** Where a cure goes first, as the column {@code way} says it. */
  public enum Into {
    MEAT,
    PICKLE;

    /** Empty where it is neither. */
    public static Optional<Into> parse(String word) {
      return Arrays.stream(values()).filter(into -> lower(into).equals(word)).findFirst();
    }
  }

  /** One way of curing. */
  public enum Way {
    DRY(Into.MEAT, Optional.empty(), false),
    COMMINUTED(Into.MEAT, Optional.empty(), false),
    PUMPED(Into.PICKLE, Optional.of(What.PUMP), true),
    /** Without a pick-up, the meat lies in its pickle until both are alike. */
    IMMERSION(Into.PICKLE, Optional.of(What.PICK_UP), false);

    private final Into into;
    private final Optional<What> takenUp;
    private final boolean needsTakenUp;

    Way(Into into, Optional<What> takenUp, boolean needsTakenUp) {
      this.into = into;
      this.takenUp = takenUp;
      this.needsTakenUp = needsTakenUp;
    }

    public Into into() {
      return into;
    }

    /** The entry that says how much of its pickle the meat took up. */
    public Optional<What> takenUp() {
      return takenUp;
    }

    /** Whether there is no sum without that entry. */
    public boolean needsTakenUp() {
      return needsTakenUp;
    }
  }

  public CureMethod {
    ways = List.copyOf(ways);
    if (!isOne(ways)) {
      throw new IllegalArgumentException(ways + " are no way of curing one piece");
    }
  }

  private static boolean isOne(List<Way> ways) {
    return ways.size() == 1
        || (ways.size() == 2
            && ways.get(0).into() == Into.PICKLE
            && ways.get(1).into() == Into.MEAT);
  }

  /**
   * Reads a method as plans write it.
   *
   * @param text {@code dry}, {@code comminuted}, {@code pumped}, {@code immersion}, or two of them
   *     as {@code pumped and dry}
   */
  public static Optional<CureMethod> parse(String text) {
    return FORMAT.parser().apply(text);
  }

  /** Each way, and each two that are used on one piece. */
  private static List<CureMethod> all() {
    return Arrays.stream(Way.values())
        .flatMap(
            one ->
                Stream.concat(
                    Stream.of(List.of(one)),
                    Arrays.stream(Way.values()).map(other -> List.of(one, other))))
        .filter(CureMethod::isOne)
        .map(CureMethod::new)
        .toList();
  }

  public boolean is(Way way) {
    return ways.equals(List.of(way));
  }

  /** A product with two ways of curing is under the limits of both. */
  boolean isUnderLimitsOf(CureMethod other) {
    return equals(other) || ways.stream().anyMatch(other::is);
  }

  /** {@code pumped and dry}. */
  public String word() {
    return ways.stream().map(CureMethod::lower).collect(Collectors.joining(" and "));
  }

  @Override
  public String in(Language language) {
    return language.word("method", word());
  }

  @Override
  public Object json() {
    return word();
  }

  @Override
  public String toString() {
    return word();
  }

  private static String lower(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }
}

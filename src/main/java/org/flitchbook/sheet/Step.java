package org.flitchbook.sheet;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/** The steps of the job in their order; the release comes after the last of them. */
public enum Step implements Argument {
  CURE(What.INTO_CURE, What.OUT_OF_CURE),
  SOAK(What.INTO_SOAK, What.OUT_OF_SOAK),
  DRY(What.INTO_DRYING, What.OUT_OF_DRYING),
  SMOKE(What.INTO_SMOKE, What.OUT_OF_SMOKE),
  CHILL(What.INTO_CHILL, What.OUT_OF_CHILL),
  RELEASE(What.REVIEWED, What.DISPATCHED);

  private final What into;
  private final What outOf;

  Step(What into, What outOf) {
    this.into = into;
    this.outOf = outOf;
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  @Override
  public String in(Language language) {
    return language.word("step", word());
  }

  @Override
  public Object json() {
    return word();
  }

  /** The event that begins it. */
  public What into() {
    return into;
  }

  /** The event that ends it. */
  public What outOf() {
    return outOf;
  }

  /** Those that a piece passes through, without the release. */
  public static List<Step> ofWork() {
    return Arrays.stream(values()).filter(step -> step != RELEASE).toList();
  }

  public static Optional<Step> parse(String word) {
    return Arrays.stream(values()).filter(step -> step.word().equals(word)).findFirst();
  }
}

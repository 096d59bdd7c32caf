package org.flitchbook.plan;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** How much hangs on a limit; only the critical ones decide a lot's verdict. */
public enum Rank {
  CRITICAL,
  OPERATING,
  RECORD;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Optional<Rank> parse(String word) {
    return Arrays.stream(values()).filter(rank -> rank.word().equals(word)).findFirst();
  }
}

package org.flitchbook.plan;

import java.util.Locale;

/** How much hangs on a limit; only the critical ones decide a lot's verdict. */
public enum Rank {
  CRITICAL,
  OPERATING,
  RECORD;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

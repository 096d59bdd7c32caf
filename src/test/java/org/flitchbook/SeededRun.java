package org.flitchbook;

import java.util.Locale;

/**
 * How many cases of a long seeded run are tried: the first tenth of them, or with {@code
 * -Dflitchbook.share=whole} all.
 */
public final class SeededRun {

  private static final boolean WHOLE =
      switch (System.getProperty("flitchbook.share", "tenth")) {
        case "tenth" -> false;
        case "whole" -> true;
        default -> throw new IllegalArgumentException("flitchbook.share is tenth or whole");
      };

  private SeededRun() {}

  /** Whether every case is tried. */
  public static boolean isWhole() {
    return WHOLE;
  }

  /** What is known of the tenth, or of the whole, by which of them is tried. */
  public static <T> T known(T ofTenth, T ofWhole) {
    return WHOLE ? ofWhole : ofTenth;
  }

  /**
   * How many cases are tried; it is printed.
   *
   * @param run what is tried
   * @param seed of its first case
   * @param cases how many the whole run has
   */
  public static int cases(String run, long seed, int cases) {
    int tried = WHOLE ? cases : cases / 10;
    System.out.printf(Locale.ROOT, "%s: %d of %d cases, seed %d%n", run, tried, cases, seed);
    return tried;
  }
}

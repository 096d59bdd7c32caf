package org.flitchbook;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;

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
    return cases(run, seed, cases, 10);
  }

  /**
   * The same for a smaller share of longer cases.
   *
   * @param of one of how many is tried
   */
  public static int cases(String run, long seed, int cases, int of) {
    int tried = WHOLE ? cases : cases / of;
    System.out.printf(Locale.ROOT, "%s: %d of %d cases, seed %d%n", run, tried, cases, seed);
    return tried;
  }

  /**
   * Cases drawn by chance, in the order in which they were; in the whole run all. It is printed.
   *
   * @param run what is tried
   * @param seed of the draw
   * @param of one of how many is drawn, and at least one
   */
  public static <T> List<T> share(String run, long seed, List<T> cases, int of) {
    List<Integer> drawn = new ArrayList<>();
    for (int i = 0; i < cases.size(); i++) {
      drawn.add(i);
    }
    Collections.shuffle(drawn, new Random(seed));
    int tried = WHOLE ? cases.size() : (cases.size() + of - 1) / of;
    System.out.printf(Locale.ROOT, "%s: %d of %d, seed %d%n", run, tried, cases.size(), seed);
    return drawn.subList(0, tried).stream().sorted().map(cases::get).toList();
  }
}

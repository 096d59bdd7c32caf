package org.flitchbook.sheet;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The sheets of a day, each a file named after it. The first five are steps, in their order. */
public enum Sheet {
  CURE,
  SOAK,
  DRY,
  SMOKE,
  CHILL,
  INSTRUMENTS,
  ACTIONS,
  DISPATCH,
  LAB;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The step that the sheet is about; empty for the sheets that serve every step. */
  public Optional<Step> step() {
    return Step.parse(word());
  }

  public static Optional<Sheet> parse(String word) {
    return Arrays.stream(values()).filter(sheet -> sheet.word().equals(word)).findFirst();
  }

  /** The sheet that a file of that name is, case ignored: {@code cure.csv}. */
  public static Optional<Sheet> ofFile(String baseName) {
    String lower = baseName.toLowerCase(Locale.ROOT);
    return lower.endsWith(".csv")
        ? parse(lower.substring(0, lower.length() - 4))
        : Optional.empty();
  }
}

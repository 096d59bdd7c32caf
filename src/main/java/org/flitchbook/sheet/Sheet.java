package org.flitchbook.sheet;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

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

  private static final Pattern WITHOUT_ROWS =
      Pattern.compile(
          "(?i)\\.(jpe?g|png|gif|heic|heif|webp|tiff?|bmp|svg|pdf|mp4|mov|avi|mkv|mp3|m4a|wav|ogg)$");

  private static final Pattern TABLE =
      Pattern.compile("(?i)(\\.(csv|tsv|tab|xlsx?|xlsm|ods|numbers)|^logs\\.json)$");

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
    return baseName.toLowerCase(Locale.ROOT).endsWith(".csv") ? meant(baseName) : Optional.empty();
  }

  /** The sheet that a file is meant as by its name, whatever its ending: {@code Cure.xlsx}. */
  public static Optional<Sheet> meant(String baseName) {
    return parse(baseName.toLowerCase(Locale.ROOT).replaceFirst("\\.[^.]*$", ""));
  }

  /** The name of its file: {@code cure.csv}. */
  public String file() {
    return word() + ".csv";
  }

  /** Whether a file may hold rows by its ending; a picture, a recording or a PDF holds none. */
  public static boolean mayHoldRows(String baseName) {
    return !WITHOUT_ROWS.matcher(baseName).find();
  }

  /** Whether a file that lies where nothing is read looks like a table, a sheet or a layout. */
  public static boolean isTable(String baseName) {
    return meant(baseName).isPresent() || TABLE.matcher(baseName).find();
  }
}

package org.flitchbook.proving;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A version of the program, as far as it is ordered: {@code 0.2.0}. */
record ProgramVersion(int major, int minor, int patch) implements Comparable<ProgramVersion> {

  private static final Pattern WRITTEN = Pattern.compile("(\\d{1,6})\\.(\\d{1,6})\\.(\\d{1,6}).*");

  /** Empty where a text names no version. */
  static Optional<ProgramVersion> parse(String text) {
    Matcher written = WRITTEN.matcher(text);
    return written.matches()
        ? Optional.of(
            new ProgramVersion(
                Integer.parseInt(written.group(1)),
                Integer.parseInt(written.group(2)),
                Integer.parseInt(written.group(3))))
        : Optional.empty();
  }

  /** Whether both texts name versions, the first an earlier one; one that names none is earlier. */
  static boolean isBefore(String one, String other) {
    return !one.equals(other)
        && parse(other)
            .map(later -> parse(one).map(earlier -> earlier.isBefore(later)).orElse(true))
            .orElse(false);
  }

  boolean isBefore(ProgramVersion other) {
    return compareTo(other) < 0;
  }

  @Override
  public int compareTo(ProgramVersion other) {
    int byMajor = Integer.compare(major, other.major);
    int byMinor = byMajor == 0 ? Integer.compare(minor, other.minor) : byMajor;
    return byMinor == 0 ? Integer.compare(patch, other.patch) : byMinor;
  }

  @Override
  public String toString() {
    return major + "." + minor + "." + patch;
  }
}

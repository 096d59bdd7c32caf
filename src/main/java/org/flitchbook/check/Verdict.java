package org.flitchbook.check;

import java.util.Locale;
import java.util.stream.Stream;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/** What is said of a limit, from the worst. It is never said that something is safe. */
public enum Verdict implements Argument {
  NOT_MET,
  NOT_SHOWN,
  PENDING,
  MET;

  /** "not met". */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  @Override
  public String in(Language language) {
    return language.word("verdict", words());
  }

  @Override
  public Object json() {
    return words();
  }

  public boolean isWorseThan(Verdict other) {
    return compareTo(other) < 0;
  }

  /** Whether it opens a deviation where the limit is critical. */
  public boolean isMissed() {
    return this == NOT_MET || this == NOT_SHOWN;
  }

  /** The worst of some; {@code NOT_SHOWN} where there are none, since nothing was shown. */
  static Verdict worst(Stream<Verdict> verdicts) {
    return verdicts.min(Verdict::compareTo).orElse(NOT_SHOWN);
  }
}

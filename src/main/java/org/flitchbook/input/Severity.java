package org.flitchbook.input;

import java.util.Locale;

/** What happens next because of a fault; ordered from the gravest. */
public enum Severity {
  /** The file can't be parsed: nothing is judged, nothing is written. */
  BROKEN,
  /** No verdict is possible on what it touches; it can't be explained away. */
  STOP,
  /** A person must explain it before release. */
  ASK,
  /** It is printed in the record and changes no verdict. */
  NOTE;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}

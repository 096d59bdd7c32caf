package org.flitchbook.document;

import java.util.Collection;
import java.util.Locale;

/** The checks that the constructors of this package share. Each refusal names the value found. */
final class Require {
  private Require() {}

  static void notBlank(String what, String value) {
    if (value.isBlank()) {
      throw new IllegalArgumentException(what + " is blank: \"" + value + "\"");
    }
  }

  static void finite(String what, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " is not a finite number: " + value);
    }
  }

  static void between(String what, double value, double least, double most) {
    finite(what, value);
    if (value < least || value > most) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%s is %s, outside %s to %s", what, value, least, most));
    }
  }

  static void notEmpty(String what, Collection<?> values) {
    if (values.isEmpty()) {
      throw new IllegalArgumentException(what + " is empty: " + values);
    }
  }
}

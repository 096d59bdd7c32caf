package org.flitchbook.plan;

import org.flitchbook.json.Fields;

/** The one version of the files' form that this program knows. */
final class Formats {

  private static final int KNOWN = 1;

  private Formats() {}

  static void check(Fields file) {
    int version = file.optionalWhole("flitchbook").orElse(0);
    if (version != KNOWN) {
      file.fault("flitchbook", version == 0 ? "no version" : String.valueOf(version), "1");
    }
  }
}

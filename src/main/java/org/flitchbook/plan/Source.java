package org.flitchbook.plan;

import org.flitchbook.json.Key;

/** Where a limit comes from: document, clause, edition, and how it was read. */
public record Source(
    String document, @Key(otherwise = "") String clause, String edition, Standing standing) {

  /** {@code 9 CFR 424.22 (b)(3)}. */
  public String cited() {
    return cited(document);
  }

  /** The same with another name of the document. */
  String cited(String called) {
    return clause.isEmpty() ? called : called + " " + clause;
  }
}

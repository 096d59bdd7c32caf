package org.flitchbook.plan;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import org.flitchbook.json.Fields;

/** Takes dates out of JSON. */
final class Dates {

  private static final String A_DATE = "a date such as 2026-01-05";

  private Dates() {}

  static Optional<LocalDate> required(Fields fields, String key) {
    return fields.parsed(key, A_DATE, Dates::parse);
  }

  static Optional<LocalDate> optional(Fields fields, String key) {
    return fields.optionalParsed(key, A_DATE, Dates::parse);
  }

  private static Optional<LocalDate> parse(String text) {
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeException noDate) {
      return Optional.empty();
    }
  }
}

package org.flitchbook.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.json.Key;

/**
 * Somebody whose initials stand in the sheets.
 *
 * @param keys that this person signs or signed with
 */
public record Person(String initials, String name, List<String> roles, List<PersonKey> keys) {

  /**
   * A key that the plan knows as a person's.
   *
   * @param fingerprint SHA-256 of its certificate, 64 digits of lower-case hexadecimal
   * @param from the first day on which it counts; empty: since it was made
   * @param until the last day on which it counts; empty: it is not retired
   */
  public record PersonKey(
      @Key(format = "fingerprint") String fingerprint,
      Optional<LocalDate> from,
      Optional<LocalDate> until) {

    public boolean isInForce(LocalDate day) {
      return from.filter(day::isBefore).isEmpty() && until.filter(day::isAfter).isEmpty();
    }
  }

  public boolean is(String role) {
    return roles.contains(role);
  }

  /** The key with that fingerprint, in force or not. */
  public Optional<PersonKey> key(String fingerprint) {
    return keys.stream().filter(each -> each.fingerprint().equals(fingerprint)).findFirst();
  }

  /** The keys that this person may sign with on that day. */
  public List<PersonKey> keysInForce(LocalDate day) {
    return keys.stream().filter(each -> each.isInForce(day)).toList();
  }
}

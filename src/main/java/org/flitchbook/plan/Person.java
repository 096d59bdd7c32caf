package org.flitchbook.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Somebody whose initials stand in the sheets.
 *
 * @param keys that this person signs or signed with
 */
public record Person(String initials, String name, List<String> roles, List<PersonKey> keys) {
  public Person {
    roles = List.copyOf(roles);
    keys = List.copyOf(keys);
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

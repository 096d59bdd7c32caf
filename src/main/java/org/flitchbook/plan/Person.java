package org.flitchbook.plan;

import java.util.List;

/** Somebody whose initials stand in the sheets. */
public record Person(String initials, String name, List<String> roles) {
  public Person {
    roles = List.copyOf(roles);
  }

  public boolean is(String role) {
    return roles.contains(role);
  }
}

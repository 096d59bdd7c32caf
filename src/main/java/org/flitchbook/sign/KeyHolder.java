package org.flitchbook.sign;

/** Whose key it is, as its certificate says; none is blank. */
public record KeyHolder(String initials, String name, String establishment) {
  public KeyHolder {
    if (initials.isBlank() || name.isBlank() || establishment.isBlank()) {
      throw new IllegalArgumentException("a key's holder has initials, a name and a house");
    }
  }
}

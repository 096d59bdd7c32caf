package org.flitchbook.sign;

/** Whose key it is, as its certificate says; none is blank. */
public record Holder(String initials, String name, String establishment) {
  public Holder {
    if (initials.isBlank() || name.isBlank() || establishment.isBlank()) {
      throw new IllegalArgumentException("a key's holder has initials, a name and a house");
    }
  }
}

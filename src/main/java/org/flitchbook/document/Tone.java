package org.flitchbook.document;

/** What a cell or a banner says, in a symbol that needs no colour. */
public enum Tone {
  PLAIN(""),
  PASS("✓"),
  FAIL("✗"),
  DOUBT("?"),
  WAIT("…");

  private final String symbol;

  Tone(String symbol) {
    this.symbol = symbol;
  }

  /** The symbol that stands in front of the words; empty for {@link #PLAIN}. */
  public String symbol() {
    return symbol;
  }
}

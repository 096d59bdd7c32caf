package org.flitchbook.document;

/**
 * A small scale drawn to a limit: a tick stands for the limit, a mark for the value, inside the
 * limit at the left and over it at the right, whatever the limit is.
 *
 * @param at where the mark stands: 0 at the limit, −1 at the left end, 1 at the right end; the ends
 *     also stand for all that lies further out, and are drawn as arrows
 */
public record Scale(double at) {
  private static final int WIDTH = 9;
  private static final int LIMIT = 5;

  public Scale {
    Demand.between("mark of a scale", at, -1, 1);
  }

  public boolean isAtEnd() {
    return Math.abs(at) == 1;
  }

  /** The scale as characters: {@code ──◆──┼───}. */
  String drawn() {
    StringBuilder drawn = new StringBuilder("─".repeat(WIDTH));
    drawn.setCharAt(LIMIT, '┼');
    int place = LIMIT + (int) Math.round(at * (at < 0 ? LIMIT : WIDTH - 1 - LIMIT));
    drawn.setCharAt(place, isAtEnd() ? (at < 0 ? '◄' : '►') : '◆');
    return drawn.toString();
  }
}

package org.flitchbook.document;

import java.util.List;

/** A worked calculation, line by line, with the equal signs under each other; not empty. */
public record Sum(List<Line> lines) implements Block {
  public Sum {
    lines = List.copyOf(lines);
    Require.notEmpty("lines of a sum", lines);
  }

  /**
   * One line of a sum.
   *
   * @param label what is worked out; not blank
   * @param expression the formula with its numbers put in; empty where the result was measured
   * @param result value and unit; not blank
   */
  public record Line(String label, String expression, String result) {
    public Line {
      Require.notBlank("label of a sum", label);
      Require.notBlank("result of a sum", result);
    }
  }
}

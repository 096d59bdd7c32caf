package org.flitchbook.sums;

import java.util.LinkedHashMap;
import java.util.Map;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/** A result with the sum that led to it. */
public record Worked(Quantity value, Formula formula) implements Argument {

  /** {@code 11.5 g × 6.25 % / 4812 g × 1,000,000 = 149.366 ppm}. */
  @Override
  public String in(Language language) {
    return formula.in(language) + " = " + value.in(language);
  }

  @Override
  public Object json() {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("formula", formula.json());
    tree.put("result", value.json());
    return tree;
  }
}

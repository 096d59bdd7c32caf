package org.flitchbook.look;

import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;

/**
 * What was seen in a file.
 *
 * @param text for people; empty where no table was found
 * @param tree the same for programs, as maps, lists, texts and numbers
 * @param faults why no table was found; else none
 */
public record LookResult(String text, Map<String, Object> tree, List<Fault> faults) {

  public LookResult {
    faults = List.copyOf(faults);
  }
}

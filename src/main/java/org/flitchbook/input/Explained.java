package org.flitchbook.input;

import java.util.List;
import java.util.Optional;
import org.flitchbook.message.Message;

/**
 * What a person said about a fault.
 *
 * @param place of the entry that says it
 * @param by initials
 * @param choice whether the readings count or are left out; empty where nothing was chosen
 * @param evidence what it names beside the readings in doubt
 * @param lacks why the evidence does not bear it out; empty where it does
 */
public record Explained(
    Place place,
    String by,
    String why,
    Optional<Choice> choice,
    List<Place> evidence,
    Optional<Message> lacks) {

  /** What becomes of the readings in doubt. */
  public enum Choice {
    /** They were right, and count. */
    CONFIRMED,
    /** They were wrong, and are left out. */
    EXCLUDED
  }

  public Explained {
    evidence = List.copyOf(evidence);
  }

  /** Whether independent evidence bears it out, so that a finding may rest on it. */
  public boolean isBorneOut() {
    return lacks.isEmpty();
  }
}

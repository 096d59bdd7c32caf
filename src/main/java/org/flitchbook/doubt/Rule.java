package org.flitchbook.doubt;

import static org.flitchbook.message.Message.say;

import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.json.Choice;
import org.flitchbook.json.Key;
import org.flitchbook.message.Message;

/**
 * A rule for dirty data, as its file states it.
 *
 * @param name as the guide calls it
 * @param source where its numbers come from
 */
public record Rule(
    @Key(name = "rule") String name,
    Severity severity,
    String source,
    @Key(inline = true) Numbers numbers) {

  /** The numbers of a rule, and what is done with them. */
  @Choice("rule")
  sealed interface Numbers permits Finder, RowNotUsed, Explanations.Explanation {}

  /** What is found in a lot; beside a note there is nothing to be done any more. */
  Fault fault(String lot, Doubt doubt) {
    Message expected =
        severity == Severity.NOTE
            ? doubt.expected()
            : say("doubt.expected", "{0}. {1}", doubt.expected(), doubt.remedy());
    Fault fault = new Fault(name, severity, lot, doubt.place(), doubt.found(), expected);
    return doubt.stretch().map(fault::over).orElse(fault);
  }
}

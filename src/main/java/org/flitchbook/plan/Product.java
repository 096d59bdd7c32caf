package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.measure.Quantity;
import org.flitchbook.message.Message;
import org.flitchbook.sheet.Step;

/**
 * A product of the plan with the limits in force for it.
 *
 * @param between the longest time that may lie between two steps
 * @param exemptions the controls that the plan says it does not need
 * @param missing the hazard controls that its class asks for, and no limit or exemption covers
 * @param open what else its limits leave open, a sentence each: one that can't cover the hazard
 *     that it names, a group of several hazards, a doubt that is not settled
 * @param conflicts limits that can't, or can only just, be met together, a sentence each
 */
public record Product(
    String code,
    String name,
    String productClass,
    String cut,
    CureMethod cureMethod,
    List<Step> steps,
    Optional<Quantity> between,
    List<Limit> limits,
    List<Exempt> exemptions,
    List<Missing> missing,
    List<Message> open,
    List<Message> conflicts,
    Optional<RuleSet.RindShare> rindShare) {

  /** An exemption with what the plan rests it on. */
  public record Exempt(RuleSet.Exemption exemption, String support) {}

  /** A hazard control that the plan is silent about. */
  public record Missing(String covers, String because, Source source) {}
}

package org.flitchbook.plan;

import java.util.Optional;
import org.flitchbook.message.Argument;
import org.flitchbook.sheet.Step;

/**
 * One limit in force for a product.
 *
 * @param id source, clause and name; the key by which plans and records quote it
 * @param name to be put into a language; a limit without one is called by what it covers
 * @param covers the hazard control that it stands for
 * @param support what the plan names for it: to loosen, to use a remembered one, or for its own
 * @param doubt the stricter remembered limit that nobody has confirmed or set aside yet
 * @param group the group of which the best verdict counts; empty where it stands alone
 */
public record Limit(
    String id,
    Argument name,
    String covers,
    Step step,
    Rank rank,
    Kind kind,
    Conditions when,
    Argument because,
    Source source,
    Optional<String> support,
    Optional<String> doubt,
    Monitoring monitoring,
    String group) {

  Limit with(Kind changed, Optional<String> named, Monitoring monitored, String inGroup) {
    return new Limit(
        id, name, covers, step, rank, changed, when, because, source, named, doubt, monitored,
        inGroup);
  }

  Limit settled() {
    return new Limit(
        id,
        name,
        covers,
        step,
        rank,
        kind,
        when,
        because,
        source,
        support,
        Optional.empty(),
        monitoring,
        group);
  }
}

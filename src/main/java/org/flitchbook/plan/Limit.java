package org.flitchbook.plan;

import java.util.Optional;
import org.flitchbook.json.Key;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.message.Word;
import org.flitchbook.sheet.Step;

/**
 * One limit in force for a product.
 *
 * @param id source, clause and name; the key by which plans and records quote it
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
    Message because,
    Source source,
    Optional<String> support,
    Optional<String> doubt,
    Monitoring monitoring,
    String group) {

  /** What the plan says of a limit's monitoring; empty texts where it says nothing. */
  public record Monitoring(
      @Key(otherwise = "") String ccp,
      @Key(otherwise = "") String monitored,
      @Key(otherwise = "") String by,
      @Key(otherwise = "") String ifMissed) {

    static final Monitoring NONE = new Monitoring("", "", "", "");
  }

  /**
   * What a rule set and a plan write alike of a limit.
   *
   * @param name what is judged, in a few words
   * @param because one sentence: why the limit is there
   */
  record Written(
      String id,
      Optional<String> name,
      String covers,
      Step step,
      Rank rank,
      Optional<Conditions> when,
      String because,
      @Key(inline = true) Kind.Stated kind) {

    /** A rule set's limit. */
    Limit of(Source source, Optional<String> doubtedBy) {
      return limit(source, Optional.empty(), doubtedBy, Monitoring.NONE);
    }

    /** The plan's own limit; its support is its source. */
    Limit ofPlan(String support, String edition, Monitoring monitoring) {
      Source source = new Source(support, "", edition, Standing.PLAN);
      return limit(source, Optional.of(support), Optional.empty(), monitoring);
    }

    /** A limit without a name is called by what it covers. */
    private Argument called() {
      return name.filter(own -> !own.equals(covers))
          .map(own -> new Word("name", own))
          .orElse(new Word("covers", covers));
    }

    private Limit limit(
        Source source, Optional<String> support, Optional<String> doubt, Monitoring monitoring) {
      return new Limit(
          id,
          called(),
          covers,
          step,
          rank,
          kind,
          when.orElse(Conditions.NONE),
          Message.of(because),
          source,
          support,
          doubt,
          monitoring,
          "");
    }
  }

  Limit with(Kind changed, Optional<String> named, Monitoring monitored, String inGroup) {
    return copy(changed, named, doubt, monitored, inGroup);
  }

  Limit settled() {
    return copy(kind, support, Optional.empty(), monitoring, group);
  }

  private Limit copy(
      Kind judged,
      Optional<String> named,
      Optional<String> doubted,
      Monitoring monitored,
      String inGroup) {
    return new Limit(
        id, name, covers, step, rank, judged, when, because, source, named, doubted, monitored,
        inGroup);
  }
}

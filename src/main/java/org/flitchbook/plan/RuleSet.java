package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.measure.Quantity;

/**
 * One file of limits.
 *
 * @param limits by their ids, in the file's order
 * @param shortNames of the documents with long names, by these
 * @param notRead plain statements of what of this set was not read in its own text
 * @param exemptions the named cases in which a control is not needed
 * @param rindShare the share of a rind-on weight that counts as rind where it was not weighed
 */
public record RuleSet(
    String name,
    String title,
    Map<String, Limit> limits,
    Map<String, String> shortNames,
    List<String> notRead,
    List<Exemption> exemptions,
    Optional<RindShare> rindShare) {

  static final String FOLDER = Plans.TEMPLATES + "limits/";

  /** A handbook's share of rind, with its source. */
  public record RindShare(@Key(format = "share of rind") Quantity value, Source source) {}

  /**
   * A named case in which a control is not needed.
   *
   * @param name by which a plan names it
   * @param covers the hazard control that it stands for
   * @param because one sentence: why the control is not needed
   */
  public record Exemption(String name, String covers, String because, Source source) {}

  /**
   * {@code templates/limits/*.json} as it is written.
   *
   * @param ruleSet the name that a plan writes under ruleSets; every id begins with it
   * @param rindShare share of the green weight that is rind, where the rind was not weighed
   * @param notRead what of this set was not read in its own text, plainly said
   * @param exemptions cases in which a control is not needed; a product names one under its own
   *     exemptions
   */
  record Written(
      @Key(least = 1, most = 1) int flitchbook,
      String ruleSet,
      String title,
      String made,
      String by,
      List<Edition> editions,
      Optional<RindShare> rindShare,
      List<String> notRead,
      @Key(optional = true, unique = "name") List<Exemption> exemptions,
      @Key(unique = "id") List<Listed> limits) {

    private RuleSet limitsById() {
      Map<String, Limit> byId = new LinkedHashMap<>();
      limits.forEach(
          each ->
              byId.putIfAbsent(
                  each.limit().id(), each.limit().of(each.source(), each.doubtedBy())));
      limits.forEach(each -> each.check(byId));
      Map<String, String> shortNames = new LinkedHashMap<>();
      editions.forEach(each -> each.called().ifPresent(s -> shortNames.put(each.document(), s)));
      return new RuleSet(ruleSet, title, byId, shortNames, notRead, exemptions, rindShare);
    }
  }

  record Edition(
      String document,
      @Key(name = "short") Optional<String> called,
      String edition,
      Optional<String> note) {}

  /**
   * A limit of a rule set.
   *
   * @param doubtedBy a stricter limit for the same thing; until the plan confirms one of the two,
   *     this one is not shown
   */
  record Listed(
      Fields object,
      @Key(inline = true) Limit.Written limit,
      Optional<String> doubtedBy,
      Source source) {

    private void check(Map<String, Limit> known) {
      doubtedBy
          .filter(id -> !known.containsKey(id))
          .ifPresent(
              id ->
                  object.fault(
                      "doubtedBy",
                      say("json.text", "\"{0}\"", id),
                      say("plan.id-of-file", "the id of a limit of this file")));
    }
  }

  static Binder.Bound<RuleSet> read(SourceFile file) {
    return PlanFormats.BINDER.read(file, Written.class).map(Written::limitsById);
  }
}

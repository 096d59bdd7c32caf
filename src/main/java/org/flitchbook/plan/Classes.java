package org.flitchbook.plan;

import static org.flitchbook.message.Message.say;

import java.time.Period;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.message.Message;

/**
 * What a plan must cover for each product class and regime, and the words by which facts are
 * stated: {@code templates/classes.json}.
 */
record Classes(
    @Key(least = 1, most = 1) int flitchbook,
    String title,
    String made,
    Optional<String> by,
    List<ProductClass> classes,
    @Key(unique = "covers") List<Coverage> coverage,
    Facts facts,
    List<RetentionRule> retention) {

  /** In place of a file that can't be read. */
  static final Classes NONE =
      new Classes(
          1,
          "",
          "",
          Optional.empty(),
          List.of(),
          List.of(),
          new Facts(List.of(), List.of(), List.of()),
          List.of());

  record ProductClass(
      @Key(name = "class") String name,
      List<String> regimes,
      List<String> covers,
      String because,
      Source source) {}

  record Facts(
      @Key(name = "cureMethod") List<CureMethod> cureMethods,
      @Key(name = "cut") List<String> cuts,
      @Key(name = "rind", format = "rind") List<String> rinds) {}

  /**
   * How long records are kept under some regimes.
   *
   * @param keep where the plan states nothing
   * @param least the shortest that the plan may state; empty where the regime has no number
   */
  record RetentionRule(
      List<String> regimes, Period keep, Optional<Period> least, String because, Source source) {

    /**
     * The plan's own time, where it states one that is long enough; else that of the rule.
     *
     * @param edition of the plan, as its own rule
     */
    private Retention of(Fields head, Optional<Period> own, String edition) {
      if (own.isPresent() && least.isPresent() && isShorter(own.get(), least.get())) {
        Message atLeast = Message.of(Retention.shown(least.get()));
        head.fault(
            "retention",
            Message.of(Retention.shown(own.get())),
            say("plan.kept-longer", "{0} or longer, {1}", atLeast, source.cited()));
      }
      return own.map(time -> new Retention(time, edition + "; " + because))
          .orElse(new Retention(keep, source.cited() + ": " + because));
    }

    private static boolean isShorter(Period one, Period other) {
      return one.toTotalMonths() < other.toTotalMonths();
    }
  }

  static Binder.Bound<Classes> read(List<SourceFile> templates) {
    return PlanFormats.BINDER.read(
        templates,
        Plans.TEMPLATES + "classes.json",
        Classes.class,
        say("plan.no-file", "no such file"),
        say("plan.classes", "what a plan must cover, by class of product"));
  }

  Optional<ProductClass> find(String name, String regime) {
    return classes.stream()
        .filter(each -> each.name().equals(name) && each.regimes().contains(regime))
        .findFirst();
  }

  /** What can cover a hazard; empty where any limit that says so does. */
  Optional<Coverage> coverage(String hazard) {
    return coverage.stream().filter(each -> each.covers().equals(hazard)).findFirst();
  }

  /** How long records are kept; empty where there is no rule for the regime. */
  Optional<Retention> retention(String regime, PlanFile.Head head, String edition) {
    return retention.stream()
        .filter(each -> each.regimes().contains(regime))
        .findFirst()
        .map(rule -> rule.of(head.object(), head.retention(), edition));
  }

  List<String> names() {
    return classes.stream().map(ProductClass::name).distinct().toList();
  }

  List<String> regimes() {
    return classes.stream().flatMap(each -> each.regimes().stream()).distinct().toList();
  }
}

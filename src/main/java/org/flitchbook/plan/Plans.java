package org.flitchbook.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Parsed;
import org.flitchbook.practice.Practice;
import org.flitchbook.words.Words;

/** Reads a HACCP plan with the rule sets and classes that it draws on. */
public final class Plans {

  /** The folder of templates, in the jar and in a book. */
  public static final String TEMPLATES = "templates/";

  private static final String CLASSES = TEMPLATES + "classes.json";

  private Plans() {}

  /**
   * Reads the plan of a book.
   *
   * @param file the plan
   * @param templates the files that a user may edit, the book's own already put in place of the
   *     tool's; {@code templates/classes.json}, {@code templates/practice.json}, {@code
   *     templates/limits/*.json}, {@code templates/words/*.json}
   * @param own the names of the templates that are the book's own
   * @return the plan with its limits, or every fault: an unknown key or id, a unit that doesn't
   *     fit, a limit loosened or taken from memory without support, a limit that can't apply
   */
  public static PlanRead read(SourceFile file, List<SourceFile> templates, List<String> own) {
    return read(file, templates, own, fields -> Wording.of(fields, templates, own));
  }

  /**
   * Reads a plan that another has replaced.
   *
   * @param words of the plan of today, so that a record speaks one language
   */
  public static PlanRead former(
      SourceFile file, List<SourceFile> templates, List<String> own, Words words) {
    return read(file, templates, own, fields -> Wording.of(words));
  }

  private static PlanRead read(
      SourceFile file,
      List<SourceFile> templates,
      List<String> own,
      Function<Fields, Wording> wording) {
    List<Fault> faults = new ArrayList<>();
    Parsed parsed = Json.read(file.name(), file.bytes());
    faults.addAll(parsed.faults());
    Optional<Plan> plan =
        parsed
            .object()
            .map(object -> Fields.of(object, faults))
            .flatMap(fields -> read(fields, file, templates, own, wording.apply(fields)));
    return new PlanRead(faults.isEmpty() ? plan : Optional.empty(), faults);
  }

  private static Optional<Plan> read(
      Fields fields,
      SourceFile file,
      List<SourceFile> templates,
      List<String> own,
      Wording wording) {
    List<RuleSet> ruleSets = new ArrayList<>();
    for (String name : fields.texts("ruleSets")) {
      ruleSet(name, fields, templates).ifPresent(ruleSets::add);
    }
    if (!fields.has("ruleSets")) {
      fields.fault("ruleSets", "no rule sets", "the names of files in templates/limits");
    }
    Classes classes =
        find(templates, CLASSES)
            .map(found -> Classes.read(found, fields.faults()))
            .orElseGet(() -> noClasses(fields.faults()));
    Optional<Practice> practice = Practice.read(templates, fields.faults());
    return new PlanReader(fields, ruleSets, classes, practice, wording).read(file.sha256(), own);
  }

  private static Classes noClasses(List<Fault> faults) {
    faults.add(
        Fault.broken(
            "missing file",
            Place.of(CLASSES),
            "no such file",
            "what a plan must cover, by class of product"));
    return Classes.NONE;
  }

  private static Optional<RuleSet> ruleSet(String name, Fields fields, List<SourceFile> templates) {
    Optional<SourceFile> file = find(templates, TEMPLATES + "limits/" + name + ".json");
    if (file.isEmpty()) {
      fields.fault("ruleSets", "\"" + name + "\"", "one of " + String.join(", ", names(templates)));
    }
    return file.flatMap(found -> RuleSetReader.read(found, fields.faults()));
  }

  private static List<String> names(List<SourceFile> templates) {
    String folder = TEMPLATES + "limits/";
    return templates.stream()
        .map(SourceFile::name)
        .filter(name -> name.startsWith(folder) && name.endsWith(".json"))
        .map(name -> name.substring(folder.length(), name.length() - ".json".length()))
        .sorted()
        .toList();
  }

  private static Optional<SourceFile> find(List<SourceFile> files, String name) {
    return files.stream().filter(file -> file.name().equals(name)).findFirst();
  }

  /** A rule set by itself, for the list of sources. */
  public static Optional<RuleSet> ruleSet(SourceFile file, List<Fault> faults) {
    return RuleSetReader.read(file, faults);
  }

  /**
   * The plan's text with a key of a person in it. Every other byte stays as it is.
   *
   * @param plan one that {@link #read} finds no fault in
   * @throws IllegalArgumentException where the plan has nobody of these initials
   */
  public static byte[] enterKey(SourceFile plan, String initials, String fingerprint) {
    return new KeyEdit(plan, initials).enter(fingerprint);
  }

  /**
   * The plan's text with the key that a person has in use given a last day.
   *
   * @param plan one that {@link #read} finds no fault in
   * @throws IllegalArgumentException where the person has no key in use
   */
  public static byte[] retireKey(
      SourceFile plan, String initials, String fingerprint, LocalDate until) {
    return new KeyEdit(plan, initials).retire(fingerprint, until);
  }

  /**
   * The people of a plan with their keys, whatever else is wrong with it; what is wrong with them
   * goes to the faults.
   */
  public static List<Person> people(SourceFile plan, List<Fault> faults) {
    Parsed parsed = Json.read(plan.name(), plan.bytes());
    faults.addAll(parsed.faults());
    return parsed
        .object()
        .map(object -> new PeopleReader(Fields.of(object, faults)).read())
        .orElse(List.of());
  }
}

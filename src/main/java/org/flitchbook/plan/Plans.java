package org.flitchbook.plan;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.words.Words;

/** Reads a HACCP plan with the rule sets and classes that it draws on. */
public final class Plans {

  /** The folder of templates, in the jar and in a book. */
  public static final String TEMPLATES = "templates/";

  private Plans() {}

  /**
   * Reads the plan of a book.
   *
   * @param file the plan
   * @param templates the files that a user may edit, the book's own already put in place of the
   *     tool's; {@code templates/classes.json}, {@code templates/limits/*.json}, {@code
   *     templates/words/*.json}
   * @param own the names of the templates that are the book's own
   * @return the plan with its limits, or every fault: an unknown key or id, a unit that doesn't
   *     fit, a limit loosened or taken from memory without support, a limit that can't apply
   */
  public static PlanRead read(SourceFile file, List<SourceFile> templates, List<String> own) {
    return new PlanReader(file, templates, own, Optional.empty()).read();
  }

  /**
   * Reads a plan that another has replaced.
   *
   * @param words of the plan of today, so that a record speaks one language
   */
  public static PlanRead former(
      SourceFile file, List<SourceFile> templates, List<String> own, Words words) {
    return new PlanReader(file, templates, own, Optional.of(words)).read();
  }

  /**
   * The plan's text with a key of a person in it. Every other byte stays as it is.
   *
   * @param plan one that {@link #read} finds no fault in
   * @throws IllegalArgumentException where the plan has nobody of these initials
   */
  public static byte[] enterKey(SourceFile plan, String initials, String fingerprint) {
    return KeyEdit.of(plan.bytes(), initials).enter(fingerprint);
  }

  /**
   * The plan's text with the key that a person has in use given a last day.
   *
   * @param plan one that {@link #read} finds no fault in
   * @throws IllegalArgumentException where the person has no key in use
   */
  public static byte[] retireKey(
      SourceFile plan, String initials, String fingerprint, LocalDate until) {
    return KeyEdit.of(plan.bytes(), initials).retire(fingerprint, until);
  }

  /**
   * Who signs the records of a house.
   *
   * @param people with their keys
   * @param roles in which each record must be signed; empty where the plan asks for none
   */
  public record Signers(List<Person> people, List<String> roles) {
    public static final Signers NONE = new Signers(List.of(), List.of());

    public Signers {
      people = List.copyOf(people);
      roles = List.copyOf(roles);
    }
  }

  /** The people of a plan with their keys and what they sign, whatever else is wrong with it. */
  public static Binder.Bound<Signers> signers(SourceFile plan) {
    List<String> asked =
        PlanFormats.BINDER
            .read(plan, PlanFile.Asked.class)
            .value()
            .map(read -> read.establishment().signatures())
            .orElse(List.of());
    return PlanFormats.BINDER
        .read(plan, PlanFile.People.class)
        .map(read -> new Signers(read.all(), asked));
  }
}

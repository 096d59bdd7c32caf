package org.flitchbook.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.UsageException;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.PlanRead;
import org.flitchbook.plan.Plans;
import org.flitchbook.plan.Succession;
import org.flitchbook.words.Words;

/**
 * The plan of a book with those that it replaced.
 *
 * @param versions empty where the plan of today can't be used
 * @param faults of the book's files, of any of its plans and in their order
 */
public record PlanVersions(Optional<Succession> versions, List<Fault> faults) {

  public PlanVersions {
    faults = List.copyOf(faults);
  }

  /** Reads all of them. */
  public static PlanVersions of(Book book) {
    List<Fault> faults = new ArrayList<>(book.faults());
    Optional<Plan> now =
        noted(Plans.read(book.plan(), book.templates(), book.ownTemplates()), faults);
    Optional<Words> words = now.map(Plan::words);
    List<Plan> former =
        book.formerPlans().stream()
            .flatMap(file -> noted(former(book, file, words), faults).stream())
            .toList();
    Optional<Succession> versions = now.map(plan -> Succession.of(plan, former, faults));
    return new PlanVersions(versions, faults);
  }

  private static PlanRead former(Book book, SourceFile file, Optional<Words> words) {
    return words
        .map(known -> Plans.former(file, book.templates(), book.ownTemplates(), known))
        .orElseGet(() -> Plans.read(file, book.templates(), book.ownTemplates()));
  }

  private static Optional<Plan> noted(PlanRead read, List<Fault> faults) {
    faults.addAll(read.faults());
    return read.plan();
  }

  /** The plan of today; empty where there is a fault in any of them. */
  public Optional<Plan> now() {
    return versions.filter(known -> faults.isEmpty()).map(Succession::now);
  }

  /**
   * A person of a plan.
   *
   * @throws UsageException where the plan knows nobody of these initials
   */
  public static Person person(Plan plan, String initials) {
    List<String> known = plan.people().stream().map(Person::initials).toList();
    return plan.person(initials)
        .orElseThrow(
            () ->
                new UsageException(
                    "\""
                        + initials
                        + "\" is nobody in the plan; it has "
                        + String.join(", ", known)));
  }
}

package org.flitchbook.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Listing;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.plan.PlanRead;
import org.flitchbook.plan.Plans;
import org.flitchbook.plan.Succession;
import org.flitchbook.words.Words;

/**
 * A book whose plan was read, with those that it replaced.
 *
 * @param versions of the plan; empty where that of today can't be used
 * @param faults of the book's files, of any of its plans and in their order
 */
public record PlannedBook(Book book, Optional<Succession> versions, List<Fault> faults) {

  public PlannedBook {
    faults = List.copyOf(faults);
  }

  /** Reads the plans of a book. */
  public static PlannedBook of(Book book) {
    List<Fault> faults = new ArrayList<>(book.faults());
    Optional<Plan> now =
        noted(Plans.read(book.plan(), book.templates(), book.ownTemplates()), faults);
    Optional<Words> words = now.map(Plan::words);
    List<Plan> former =
        book.formerPlans().stream()
            .flatMap(file -> noted(former(book, file, words), faults).stream())
            .toList();
    Optional<Succession> versions = now.map(plan -> Succession.of(plan, former, faults));
    return new PlannedBook(book, versions, faults);
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
  public Optional<Plan> plan() {
    return versions.filter(known -> faults.isEmpty()).map(Succession::now);
  }

  /**
   * A person of a plan.
   *
   * @throws UsageException where the plan knows nobody of these initials
   */
  public static Person person(Plan plan, String initials) {
    Listing known = Listing.commas(plan.people().stream().map(Person::initials).toList());
    return plan.person(initials)
        .orElseThrow(
            () ->
                new UsageException(
                    "book.nobody", "\"{0}\" is nobody in the plan; it has {1}", initials, known));
  }
}

package org.flitchbook.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
    PlanRead now = Plans.read(book.plan(), book.templates(), book.ownTemplates());
    Optional<Words> words = now.plan().map(Plan::words);
    List<PlanRead> reads =
        book.formerPlans().stream().map(file -> former(book, file, words)).toList();
    List<Plan> former = reads.stream().flatMap(read -> read.plan().stream()).toList();
    List<Fault> faults = new ArrayList<>(book.faults());
    faults.addAll(now.faults());
    reads.forEach(read -> faults.addAll(read.faults()));
    now.plan().ifPresent(plan -> faults.addAll(Succession.faults(plan, former)));
    return new PlannedBook(book, now.plan().map(plan -> all(plan, former)), faults);
  }

  private static Succession all(Plan now, List<Plan> former) {
    return new Succession(Stream.concat(former.stream(), Stream.of(now)).toList());
  }

  private static PlanRead former(Book book, SourceFile file, Optional<Words> words) {
    return words
        .map(known -> Plans.former(file, book.templates(), book.ownTemplates(), known))
        .orElseGet(() -> Plans.read(file, book.templates(), book.ownTemplates()));
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

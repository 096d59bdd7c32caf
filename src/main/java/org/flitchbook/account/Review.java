package org.flitchbook.account;

import static java.util.Comparator.comparing;
import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toMap;
import static org.flitchbook.message.Message.say;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.flitchbook.check.Judgement;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Person;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * What a review of some lots rests on.
 *
 * @param written whose entries they have, the most first; the review itself is the reviewer's to
 *     write and is none of them
 * @param standing the worst of the lots
 */
public record Review(List<Written> written, Standing standing) {

  /** How many entries have those initials, which are empty where they are missing. */
  public record Written(String initials, long entries) {}

  /** What may be said of lots once their records were read, from the best. */
  public enum Standing {
    /** Every critical limit is met, and nothing is open. */
    LIMITS_MET,
    /** A limit was missed; the corrective action and the disposition of every gram are on file. */
    ACTION_ON_FILE,
    /** Neither is so: the lot is not released. */
    NOT_RELEASED
  }

  /** What the plan asks for where it foresaw a deviation, and where it did not. */
  private static final List<List<What>> ACTIONS =
      List.of(
          List.of(
              What.CAUSE, What.CONTROL_REGAINED, What.PREVENTION, What.DISPOSITION, What.CLOSED),
          List.of(What.EVALUATED, What.DISPOSITION, What.REASSESSED, What.CLOSED));

  public Review {
    written = List.copyOf(written);
  }

  /** Of the records of these lots; an entry of several of them counts once. */
  public static Review of(Collection<Judgement> judgements, Accounts accounts) {
    Map<Object, Entry> entries =
        judgements.stream()
            .flatMap(each -> each.lot().entries().stream())
            .filter(entry -> !entry.is(What.REVIEWED))
            .collect(toMap(Entry::place, Function.identity(), (one, same) -> one));
    return new Review(
        entries.values().stream()
            .collect(groupingBy(Entry::by, TreeMap::new, counting()))
            .entrySet()
            .stream()
            .map(each -> new Written(each.getKey(), each.getValue()))
            .sorted(comparing(Written::entries).reversed())
            .toList(),
        judgements.stream()
            .map(each -> standing(each, accounts.lot(each)))
            .reduce(Standing.LIMITS_MET, (one, other) -> one.compareTo(other) > 0 ? one : other));
  }

  private static Standing standing(Judgement judgement, LotAccount account) {
    if (judgement.isFree()) {
      return Standing.LIMITS_MET;
    }
    boolean isDone =
        !judgement.deviations().isEmpty()
            && judgement.openFaults().isEmpty()
            && isClosed(judgement.lot(), account);
    return isDone ? Standing.ACTION_ON_FILE : Standing.NOT_RELEASED;
  }

  /** Whether the disposition of what was held is on file to the last gram. */
  public static boolean isDisposed(LotAccount account) {
    return !account.held().dispositions().isEmpty()
        && account.held().left().filter(left -> left.value().signum() == 0).isPresent();
  }

  /** Whether all that closes a deviation of a lot is on file. */
  public static boolean isClosed(Lot lot, LotAccount account) {
    return isDisposed(account) && ACTIONS.stream().anyMatch(parts -> hasAll(lot, parts));
  }

  /** Held again after it was closed, it is not closed. */
  private static boolean hasAll(Lot lot, List<What> parts) {
    return parts.stream().allMatch(part -> lot.first(part).isPresent())
        && lot.last(What.CLOSED)
            .filter(end -> lot.last(What.HELD).filter(h -> end.time().isBefore(h.time())).isEmpty())
            .isPresent();
  }

  /** How many entries are somebody's. */
  public long by(String initials) {
    return written.stream()
        .filter(each -> each.initials().equals(initials))
        .mapToLong(Written::entries)
        .sum();
  }

  /** Such as {@code MA 41, IQ 21}; "none" where there is no entry. */
  public Argument list() {
    return list(written);
  }

  /** The entries of all the others. */
  public Argument listWithout(String initials) {
    return list(written.stream().filter(each -> !each.initials().equals(initials)).toList());
  }

  private static Argument list(List<Written> some) {
    List<Message> parts = some.stream().map(Review::part).toList();
    return parts.isEmpty() ? say("account.review.no-entry", "none") : Listing.commas(parts);
  }

  private static Message part(Written each) {
    return each.initials().isEmpty()
        ? say("account.review.nobody", "without initials {0}", each.entries())
        : say("account.review.part", "{0} {1}", each.initials(), each.entries());
  }

  /**
   * Whether two reviewers are wanted, each for what the other wrote: where the plan allows it, and
   * each of its reviewers has entries.
   */
  public boolean isByTwo(Plan plan) {
    List<Person> reviewers =
        plan.people().stream().filter(person -> person.is("reviewer")).toList();
    return plan.establishment().isReviewedByTwo()
        && reviewers.size() > 1
        && reviewers.stream().allMatch(person -> by(person.initials()) > 0);
  }
}

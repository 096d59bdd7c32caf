package org.flitchbook.record;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.flitchbook.check.Judgement;
import org.flitchbook.lot.Register;
import org.flitchbook.plan.Instrument;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * All that a code touches in a book.
 *
 * @param roles what the code is; not empty
 * @param checks of the instrument, where it is one
 */
record Trace(String code, Set<Role> roles, List<TracedLot> lots, List<Register.Check> checks) {

  private static final Set<What> LEAVING =
      EnumSet.of(What.DISPATCHED, What.RETURNED, What.DESTROYED);

  /**
   * One lot.
   *
   * @param touches how the code touched it
   * @param went what left of it, came back or was destroyed
   */
  record TracedLot(Judgement judgement, List<Touch> touches, List<Entry> went) {}

  /**
   * Follows a code.
   *
   * @param day all lots of the book
   * @return empty where the book doesn't know it
   */
  static Optional<Trace> of(DayJudged day, String code) {
    Set<Role> roles = planned(day, code);
    for (Role role : Role.values()) {
      if (day.judgements().stream().anyMatch(each -> role.isOf(each.lot(), code))) {
        roles.add(role);
      }
    }
    List<TracedLot> lots =
        day.judgements().stream()
            .filter(each -> roles.stream().anyMatch(role -> role.isOf(each.lot(), code)))
            .map(each -> traced(each, roles, code))
            .toList();
    return roles.isEmpty()
        ? Optional.empty()
        : Optional.of(new Trace(code, roles, lots, checks(day, code)));
  }

  private static TracedLot traced(Judgement judgement, Set<Role> roles, String code) {
    List<Touch> touches =
        roles.stream().flatMap(role -> role.touches(judgement.lot(), code).stream()).toList();
    return new TracedLot(judgement, touches, went(judgement, roles, code));
  }

  /** Of a customer's trace only what the customer got. */
  private static List<Entry> went(Judgement judgement, Set<Role> roles, String code) {
    boolean all = !roles.equals(EnumSet.of(Role.CUSTOMER));
    return judgement.lot().entries().stream()
        .filter(entry -> LEAVING.contains(entry.what()))
        .filter(entry -> all || entry.item().equalsIgnoreCase(code))
        .toList();
  }

  /** What the plan knows, though it may have touched nothing yet. */
  private static Set<Role> planned(DayJudged day, String code) {
    Set<Role> roles = EnumSet.noneOf(Role.class);
    if (day.plan().ingredients().stream().anyMatch(i -> i.lot().equalsIgnoreCase(code))) {
      roles.add(Role.INGREDIENT);
    }
    if (instrument(day, code).isPresent()) {
      roles.add(Role.INSTRUMENT);
    }
    return roles;
  }

  private static Optional<Instrument> instrument(DayJudged day, String code) {
    return day.plan().instruments().stream()
        .filter(instrument -> instrument.id().equalsIgnoreCase(code))
        .findFirst();
  }

  private static List<Register.Check> checks(DayJudged day, String code) {
    return instrument(day, code).map(day.register()::of).orElse(List.of());
  }
}

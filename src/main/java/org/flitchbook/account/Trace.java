package org.flitchbook.account;

import static org.flitchbook.message.Message.say;

import java.time.Instant;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.check.Judgement;
import org.flitchbook.input.Place;
import org.flitchbook.lot.Lot;
import org.flitchbook.lot.Register;
import org.flitchbook.lot.Track;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Instrument;
import org.flitchbook.plan.Plan;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/**
 * All that a code touches in a book.
 *
 * @param roles what the code is; not empty
 * @param checks of the instrument, where it is one
 */
public record Trace(
    String code, Set<Role> roles, List<TracedLot> lots, List<Register.Check> checks) {

  private static final Set<What> LEAVING =
      EnumSet.of(What.DISPATCHED, What.RETURNED, What.DESTROYED);

  private static final Set<What> INGREDIENTS =
      EnumSet.of(
          What.CURING_SALT, What.SALT, What.SUGAR, What.ACCELERATOR, What.OTHER, What.PICKLE);

  /**
   * How the code touched a lot, and what left of it, came back or was destroyed; of a customer's
   * trace only what the customer got.
   */
  public record TracedLot(Judgement judgement, List<Touch> touches, List<Entry> went) {}

  static Optional<Trace> of(Plan plan, Register register, List<Judgement> all, String code) {
    List<Instrument> instruments =
        plan.instruments().stream().filter(each -> each.id().equalsIgnoreCase(code)).toList();
    Set<Role> roles = EnumSet.noneOf(Role.class);
    // What the plan knows may have touched nothing yet.
    instruments.forEach(each -> roles.add(Role.INSTRUMENT));
    plan.ingredients().stream()
        .filter(each -> each.lot().equalsIgnoreCase(code))
        .forEach(each -> roles.add(Role.INGREDIENT));
    Stream.of(Role.values())
        .filter(role -> all.stream().anyMatch(each -> role.isOf(each.lot(), code)))
        .forEach(roles::add);
    List<TracedLot> lots =
        all.stream()
            .filter(each -> roles.stream().anyMatch(role -> role.isOf(each.lot(), code)))
            .map(each -> traced(each, roles, code))
            .toList();
    List<Register.Check> checks =
        instruments.stream().limit(1).flatMap(each -> register.of(each).stream()).toList();
    return Optional.of(new Trace(code, roles, lots, checks)).filter(trace -> !roles.isEmpty());
  }

  private static TracedLot traced(Judgement judgement, Set<Role> roles, String code) {
    boolean wholeLot = !roles.equals(EnumSet.of(Role.CUSTOMER));
    return new TracedLot(
        judgement,
        roles.stream().flatMap(role -> role.touches(judgement.lot(), code).stream()).toList(),
        judgement.lot().entries().stream()
            .filter(entry -> LEAVING.contains(entry.what()))
            .filter(entry -> wholeLot || entry.item().equalsIgnoreCase(code))
            .toList());
  }

  /** What a code can be in a book; one code may be several of them. */
  public enum Role implements Argument {
    LOT(say("role.lot", "lot")),
    INGREDIENT(say("role.ingredient", "ingredient's lot")),
    SUPPLIER_LOT(say("role.supplier-lot", "supplier's lot")),
    INSTRUMENT(say("role.instrument", "instrument")),
    CUSTOMER(say("role.customer", "customer"));

    private final Message called;

    Role(Message called) {
      this.called = called;
    }

    /** {@code supplier lot}. */
    @Override
    public String json() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    @Override
    public String in(Language language) {
      return called.in(language);
    }

    /** Whether that code is this for a lot. */
    private boolean isOf(Lot lot, String code) {
      return this == LOT ? lot.code().equalsIgnoreCase(code) : !touches(lot, code).isEmpty();
    }

    /** How that code touched a lot in this role; nothing where it did not. */
    private List<Touch> touches(Lot lot, String code) {
      return switch (this) {
        case LOT -> lot.code().equalsIgnoreCase(code) ? Touch.all(lot) : List.of();
        case INGREDIENT -> Touch.entries(lot, INGREDIENTS, code);
        case SUPPLIER_LOT -> Touch.entries(lot, EnumSet.of(What.SUPPLIER_LOT), code);
        case INSTRUMENT -> Touch.byInstrument(lot, code);
        case CUSTOMER -> Touch.entries(lot, EnumSet.of(What.DISPATCHED, What.RETURNED), code);
      };
    }
  }

  /**
   * How something touched a lot: by one entry, or by all readings of one kind with an instrument.
   *
   * @param item the ingredient, customer, place, probe or instrument
   * @param quantity as written; empty where there is none, or more than one
   * @param readings how many there are
   * @param place of the first
   */
  public record Touch(
      What what,
      String item,
      String quantity,
      Instant from,
      Instant to,
      int readings,
      Place place) {

    private static Touch of(String item, List<Entry> entries) {
      Entry first = entries.get(0);
      return new Touch(
          first.what(),
          item,
          entries.size() == 1 ? first.shown() : "",
          first.time().written(),
          entries.get(entries.size() - 1).time().written(),
          entries.size(),
          first.place());
    }

    private static Touch of(Track track) {
      return new Touch(
          track.what(),
          track.instrument() + " " + track.called(),
          "",
          Instant.ofEpochMilli(track.earliest(0)),
          Instant.ofEpochMilli(track.earliest(track.size() - 1)),
          track.size(),
          track.origin());
    }

    private static List<Touch> entries(Lot lot, Set<What> whats, String code) {
      return lot.entries().stream()
          .filter(entry -> whats.contains(entry.what()) && entry.item().equalsIgnoreCase(code))
          .map(entry -> of(entry.item(), List.of(entry)))
          .toList();
    }

    /** All that was read with one instrument, one touch a kind of reading and probe. */
    private static List<Touch> byInstrument(Lot lot, String id) {
      Map<What, List<Entry>> written =
          lot.entries().stream()
              .filter(entry -> entry.instrument().equalsIgnoreCase(id))
              .collect(Collectors.groupingBy(Entry::what, LinkedHashMap::new, Collectors.toList()));
      Stream<Touch> logged =
          lot.tracks().stream()
              .map(Lot.StepTrack::track)
              .filter(track -> track.instrument().equalsIgnoreCase(id))
              .map(Touch::of)
              .distinct();
      return Stream.concat(written.values().stream().map(each -> of(id, each)), logged).toList();
    }

    /** What went into a lot, where it lay, and what it was weighed and read with. */
    private static List<Touch> all(Lot lot) {
      Stream<Touch> entries =
          lot.entries().stream()
              .filter(
                  entry ->
                      INGREDIENTS.contains(entry.what())
                          || entry.is(What.SUPPLIER_LOT)
                          || lot.stays().stream().anyMatch(stay -> stay.into().equals(entry)))
              .map(entry -> of(entry.item(), List.of(entry)));
      Set<String> instruments =
          Stream.concat(
                  lot.entries().stream().map(Entry::instrument),
                  lot.tracks().stream().map(each -> each.track().instrument()))
              .filter(id -> !id.isEmpty())
              .collect(Collectors.toCollection(() -> new TreeSet<>(String.CASE_INSENSITIVE_ORDER)));
      Stream<Touch> read = instruments.stream().flatMap(id -> byInstrument(lot, id).stream());
      return Stream.concat(entries, read).toList();
    }
  }
}

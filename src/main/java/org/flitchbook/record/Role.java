package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Message;
import org.flitchbook.reading.Entry;
import org.flitchbook.sheet.What;

/** What a code can be in a book; one code may be several of them. */
enum Role {
  LOT(say("role.lot", "lot")),
  INGREDIENT(say("role.ingredient", "ingredient's lot")),
  SUPPLIER_LOT(say("role.supplier-lot", "supplier's lot")),
  INSTRUMENT(say("role.instrument", "instrument")),
  CUSTOMER(say("role.customer", "customer"));

  private static final Set<What> INGREDIENTS =
      EnumSet.of(
          What.CURING_SALT, What.SALT, What.SUGAR, What.ACCELERATOR, What.OTHER, What.PICKLE);

  private static final Set<What> PARTINGS = EnumSet.of(What.DISPATCHED, What.RETURNED);

  private final Message told;

  Role(Message told) {
    this.told = told;
  }

  /** What the code is, in words. */
  Message told() {
    return told;
  }

  /** {@code supplier lot}. */
  String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** Whether that code is this for a lot. */
  boolean isOf(Lot lot, String code) {
    return this == LOT ? lot.code().equalsIgnoreCase(code) : !touches(lot, code).isEmpty();
  }

  /** How that code touched a lot in this role; nothing where it did not. */
  List<Touch> touches(Lot lot, String code) {
    return switch (this) {
      case LOT -> lot.code().equalsIgnoreCase(code) ? all(lot) : List.of();
      case INGREDIENT -> entries(lot, INGREDIENTS, code);
      case SUPPLIER_LOT -> entries(lot, EnumSet.of(What.SUPPLIER_LOT), code);
      case INSTRUMENT -> Touch.byInstrument(lot, code);
      case CUSTOMER -> entries(lot, PARTINGS, code);
    };
  }

  private static List<Touch> entries(Lot lot, Set<What> whats, String code) {
    return lot.entries().stream()
        .filter(entry -> whats.contains(entry.what()) && entry.item().equalsIgnoreCase(code))
        .map(Touch::of)
        .toList();
  }

  /** What went into a lot, where it lay, and what it was weighed and read with. */
  private static List<Touch> all(Lot lot) {
    Stream<Touch> entries =
        lot.entries().stream()
            .filter(entry -> isIngredient(entry) || isPlace(lot, entry))
            .map(Touch::of);
    return Stream.concat(entries, Touch.instruments(lot).stream()).toList();
  }

  private static boolean isIngredient(Entry entry) {
    return INGREDIENTS.contains(entry.what()) || entry.is(What.SUPPLIER_LOT);
  }

  private static boolean isPlace(Lot lot, Entry entry) {
    return lot.stays().stream().anyMatch(stay -> stay.into().equals(entry));
  }
}

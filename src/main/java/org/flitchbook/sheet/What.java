package org.flitchbook.sheet;

import static org.flitchbook.sheet.Sheet.ACTIONS;
import static org.flitchbook.sheet.Sheet.CHILL;
import static org.flitchbook.sheet.Sheet.CURE;
import static org.flitchbook.sheet.Sheet.DISPATCH;
import static org.flitchbook.sheet.Sheet.DRY;
import static org.flitchbook.sheet.Sheet.INSTRUMENTS;
import static org.flitchbook.sheet.Sheet.LAB;
import static org.flitchbook.sheet.Sheet.SMOKE;
import static org.flitchbook.sheet.Sheet.SOAK;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.flitchbook.measure.Dimension;
import org.flitchbook.measure.Measurable;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;

/** The words of the column {@code what}: what an entry is about, on which sheets it may stand. */
public enum What implements Argument, Measurable {
  PRODUCT(Shape.WORDS, CURE),
  SUPPLIER_LOT(Shape.ITEM, CURE),
  RECEIVED_TEMPERATURE(Shape.TEMPERATURE, CURE),
  RIND(Shape.ON_OFF, CURE),
  GREEN_WEIGHT(Shape.MASS, CURE),
  RIND_WEIGHT(Shape.MASS, CURE),
  THICKNESS(Shape.LENGTH, CURE),
  CURING_SALT(Shape.MASS, CURE),
  SALT(Shape.MASS, CURE),
  SUGAR(Shape.MASS, CURE),
  ACCELERATOR(Shape.MASS, CURE),
  OTHER(Shape.MASS, CURE),
  PICKLE(Shape.MASS, CURE),
  PUMP(Shape.SHARE, CURE),
  PICK_UP(Shape.SHARE, CURE),
  SURFACES_COVERED(Shape.WORDS, CURE),
  INTO_CURE(Shape.ITEM, CURE),
  TURNED(Shape.EVENT, CURE),
  OUT_OF_CURE(Shape.EVENT, CURE),
  INTO_SOAK(Shape.ITEM, SOAK),
  WATER_TEMPERATURE(Shape.TEMPERATURE, SOAK),
  WATER_CHANGED(Shape.EVENT, SOAK),
  OUT_OF_SOAK(Shape.EVENT, SOAK),
  INTO_DRYING(Shape.ITEM, DRY),
  SURFACE(Shape.SURFACE, DRY),
  OUT_OF_DRYING(Shape.EVENT, DRY),
  INTO_SMOKE(Shape.ITEM, SMOKE),
  CHAMBER_TEMPERATURE(Shape.TEMPERATURE, SMOKE),
  WET_BULB_TEMPERATURE(Shape.TEMPERATURE, SMOKE),
  STEAM(Shape.ON_OFF, SMOKE),
  OVEN_SEALED(Shape.ON_OFF, SMOKE),
  WOOD(Shape.ITEM, SMOKE),
  GLAZED(Shape.MASS, SMOKE),
  OUT_OF_SMOKE(Shape.EVENT, SMOKE),
  INTO_CHILL(Shape.ITEM, CHILL),
  OUT_OF_CHILL(Shape.EVENT, CHILL),
  COOLER_TEMPERATURE(Shape.TEMPERATURE, CURE, DRY, CHILL),
  HUMIDITY(Shape.SHARE, DRY, SMOKE),
  INTERNAL_TEMPERATURE(Shape.TEMPERATURE, SMOKE, CHILL, DISPATCH),
  WEIGHT(Shape.MASS, CURE, SOAK, DRY, SMOKE, CHILL),
  ICE_POINT(Shape.TEMPERATURE, INSTRUMENTS),
  BOILING_POINT(Shape.TEMPERATURE, INSTRUMENTS),
  CHECK_WEIGHT(Shape.MASS, INSTRUMENTS),
  COMPARED_WITH_REFERENCE(Shape.TEMPERATURE, INSTRUMENTS),
  FOUND(Shape.WORDS, ACTIONS),
  HELD(Shape.MAYBE_MASS, ACTIONS),
  CAUSE(Shape.WORDS, ACTIONS),
  CONTROL_REGAINED(Shape.WORDS, ACTIONS),
  PREVENTION(Shape.WORDS, ACTIONS),
  EVALUATED(Shape.WORDS, ACTIONS),
  DISPOSITION(Shape.MAYBE_MASS, ACTIONS),
  REASSESSED(Shape.WORDS, ACTIONS),
  CLOSED(Shape.EVENT, ACTIONS),
  EXPLAINED(Shape.WORDS, ACTIONS),
  PACKED(Shape.MASS, DISPATCH),
  ENDS(Shape.MASS, DISPATCH),
  WASTE(Shape.MASS, DISPATCH),
  SAMPLE(Shape.MASS, DISPATCH),
  REVIEWED(Shape.EVENT, DISPATCH),
  DISPATCHED(Shape.MAYBE_MASS, DISPATCH),
  RETURNED(Shape.MAYBE_MASS, DISPATCH),
  DESTROYED(Shape.MAYBE_MASS, DISPATCH),
  LAB_SALT("salt", Shape.SHARE, LAB),
  MOISTURE(Shape.SHARE, LAB),
  RESIDUAL_NITRITE(Shape.SHARE, LAB),
  RESIDUAL_NITRITE_ION(Shape.SHARE, LAB),
  RESIDUAL_NITRATE(Shape.SHARE, LAB),
  WATER_ACTIVITY(Shape.BARE, LAB),
  PH("pH", Shape.BARE, LAB);

  /** What a probe may read of a place. */
  private static final Set<What> OF_PLACE =
      EnumSet.of(
          COOLER_TEMPERATURE,
          WATER_TEMPERATURE,
          CHAMBER_TEMPERATURE,
          WET_BULB_TEMPERATURE,
          HUMIDITY);

  /** What a probe may read: of a piece, or of a place. */
  public static final List<What> LOGGED =
      Stream.concat(Stream.of(INTERNAL_TEMPERATURE), OF_PLACE.stream()).toList();

  private final String word;
  private final Shape shape;
  private final Set<Sheet> sheets;

  What(Shape shape, Sheet first, Sheet... others) {
    this.word = spoken(name());
    this.shape = shape;
    this.sheets = EnumSet.of(first, others);
  }

  What(String word, Shape shape, Sheet sheet) {
    this.word = word;
    this.shape = shape;
    this.sheets = EnumSet.of(sheet);
  }

  private static String spoken(String name) {
    String words = name.toLowerCase(Locale.ROOT).replace('_', ' ');
    return words.replace("pick up", "pick-up").replace("wet bulb", "wet-bulb");
  }

  /** As written in a sheet, a log's layout and a plan: {@code green weight}. */
  public String word() {
    return word;
  }

  @Override
  public String in(Language language) {
    return language.word("what", word);
  }

  @Override
  public Object json() {
    return word;
  }

  public Shape shape() {
    return shape;
  }

  /** Of a word that is no measurement, a bare number. */
  @Override
  public Dimension dimension() {
    return shape.dimension().orElse(Dimension.NUMBER);
  }

  @Override
  public List<Unit> units() {
    return this == HUMIDITY ? List.of(Unit.PERCENT) : Measurable.super.units();
  }

  public boolean isOfPlace() {
    return OF_PLACE.contains(this);
  }

  public boolean standsOn(Sheet sheet) {
    return sheets.contains(sheet);
  }

  /** The word as it may stand on that sheet. */
  public static Optional<What> on(Sheet sheet, String word) {
    return on(sheet).stream().filter(what -> what.word.equalsIgnoreCase(word)).findFirst();
  }

  /** All that may stand on that sheet. */
  public static List<What> on(Sheet sheet) {
    return Arrays.stream(values()).filter(what -> what.standsOn(sheet)).toList();
  }

  /** By its word, on whatever sheet; the first where two sheets share the word. */
  public static Optional<What> parse(String word) {
    return Arrays.stream(values()).filter(what -> what.word.equalsIgnoreCase(word)).findFirst();
  }
}

package org.flitchbook.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.flitchbook.message.Language;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

final class UnitTest {

  @ParameterizedTest
  @EnumSource
  void each_unit_is_read_by_its_own_symbol(Unit unit) {
    assertEquals(Optional.of(unit), Unit.parse(unit.symbol()));
    assertEquals(Optional.of(unit), Unit.parse(" " + unit.symbol() + " "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # dimension | named in a diagnostic
          MASS        | g, kg, oz or lb
          TEMPERATURE | °C or °F
          SHARE       | ppm or %
          TIME        | s, min, h or d
          LENGTH      | mm, cm, in, m or ft
          NUMBER      | ''
          """)
  void the_choices_are_named(Dimension dimension, String named) {
    assertEquals(named, Message.of(Listing.or(Unit.of(dimension))).toString());
  }

  /** NIST Handbook 44, appendix C prints these equivalents as exact (from memory). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1 lb  | 453.59237 g
          1 oz  | 28.349523125 g
          1 in  | 25.4 mm
          1 ft  | 304.8 mm
          1 kg  | 1000 g
          1 cm  | 10 mm
          1 m   | 1000 mm
          1 min | 60 s
          1 h   | 3600 s
          1 d   | 86400 s
          1 %   | 10000 ppm
          """)
  void a_factor_is_exact(String one, String many) {
    assertEquals(0, Quantity.required(one).compareTo(Quantity.required(many)));
  }

  @Test
  void a_dimension_is_named_in_words() {
    assertEquals("a length of time", Unit.HOUR.dimension().words());
  }

  /** One display shows grams and kilograms, another one ounces and pounds. */
  @ParameterizedTest
  @CsvSource({
    "GRAM, KILOGRAM, true",
    "OUNCE, POUND, true",
    "POUND, OUNCE, true",
    "GRAM, OUNCE, false",
    "POUND, KILOGRAM, false",
    "GRAM, MILLIMETRE, false",
    "CELSIUS, FAHRENHEIT, true",
  })
  void some_units_stand_on_one_display(Unit one, Unit other, boolean beside) {
    assertEquals(beside, one.isBeside(other));
  }

  @ParameterizedTest
  @EnumSource
  void a_dimension_has_its_units_and_its_words(Dimension dimension) {
    Measurable measured = () -> dimension;
    assertEquals(Unit.of(dimension), measured.units());
    assertEquals(dimension.words(), dimension.in(Language.ENGLISH));
  }
}

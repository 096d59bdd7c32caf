package org.flitchbook.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.flitchbook.measure.Dimension;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

final class SheetTest {

  /** The words as the book's description lists them, sheet by sheet. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # sheet     | words
          CURE        | product, supplier lot, received temperature, rind, green weight, rind weight, thickness, curing salt, salt, sugar, accelerator, other, pickle, pump, pick-up, surfaces covered, into cure, turned, cooler temperature, out of cure, weight
          SOAK        | into soak, water temperature, water changed, out of soak, weight
          DRY         | into drying, cooler temperature, humidity, surface, out of drying, weight
          SMOKE       | into smoke, chamber temperature, humidity, wet-bulb temperature, internal temperature, steam, oven sealed, wood, glazed, out of smoke, weight
          CHILL       | into chill, cooler temperature, internal temperature, out of chill, weight
          INSTRUMENTS | ice point, boiling point, check weight, compared with reference
          ACTIONS     | found, held, cause, control regained, prevention, evaluated, disposition, reassessed, closed, explained
          DISPATCH    | internal temperature, packed, ends, waste, sample, reviewed, dispatched, returned, destroyed
          LAB         | salt, moisture, residual nitrite, residual nitrite ion, residual nitrate, water activity, pH
          """)
  void a_sheet_has_its_words(Sheet sheet, String words) {
    Set<String> expected = new TreeSet<>(List.of(words.split(", ")));
    assertEquals(
        expected,
        What.on(sheet).stream().map(What::word).collect(Collectors.toCollection(TreeSet::new)));
  }

  @ParameterizedTest
  @EnumSource
  void each_word_is_read_on_its_sheets_in_any_case(What what) {
    for (Sheet sheet : Sheet.values()) {
      Optional<What> read = What.on(sheet, what.word().toUpperCase(java.util.Locale.ROOT));
      assertEquals(what.standsOn(sheet), read.equals(Optional.of(what)), sheet + " " + what);
    }
  }

  @Test
  void salt_is_rubbed_in_on_one_sheet_and_measured_on_another() {
    assertEquals(Optional.of(What.SALT), What.on(Sheet.CURE, "salt"));
    assertEquals(Optional.of(What.LAB_SALT), What.on(Sheet.LAB, "salt"));
    assertEquals(Optional.of(Dimension.MASS), What.SALT.shape().dimension());
    assertEquals(Optional.of(Dimension.SHARE), What.LAB_SALT.shape().dimension());
  }

  @Test
  void a_word_that_no_sheet_has_is_none() {
    assertEquals(Optional.empty(), What.parse("pick up"));
    assertEquals(Optional.empty(), What.on(Sheet.CHILL, "curing salt"));
    assertEquals(Optional.empty(), Step.parse("Cure"));
    assertEquals(Optional.empty(), Sheet.parse("release"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      textBlock =
          """
          # file       | sheet
          cure.csv     | CURE
          Cure.CSV     | CURE
          CHILL.csv    | CHILL
          dispatch.csv | DISPATCH
          logs.json    | -
          cure.txt     | -
          cure         | -
          cures.csv    | -
          .csv         | -
          """)
  void a_sheet_is_a_file_named_after_it(String file, Sheet sheet) {
    assertEquals(Optional.ofNullable(sheet), Sheet.ofFile(file));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # step | begins      | ends
          CURE   | into cure   | out of cure
          SOAK   | into soak   | out of soak
          DRY    | into drying | out of drying
          SMOKE  | into smoke  | out of smoke
          CHILL  | into chill  | out of chill
          RELEASE | reviewed   | dispatched
          """)
  void a_step_begins_and_ends_with_its_events(Step step, String begins, String ends) {
    assertEquals(begins, step.into().word());
    assertEquals(ends, step.outOf().word());
    assertEquals(Optional.of(step), Step.parse(step.word()));
  }

  @Test
  void the_first_five_sheets_are_the_steps_in_their_order() {
    List<Step> ofSheets =
        Arrays.stream(Sheet.values()).flatMap(sheet -> sheet.step().stream()).toList();
    assertEquals(Step.ofWork(), ofSheets);
    assertEquals(5, ofSheets.size());
  }

  @ParameterizedTest
  @EnumSource
  void what_is_weighed_or_measured_names_its_instrument(Shape shape) {
    assertEquals(shape == Shape.MASS || shape == Shape.TEMPERATURE, shape.needsInstrument());
    assertTrue(shape.choices().isEmpty() || shape.dimension().isEmpty());
  }
}

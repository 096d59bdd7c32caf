package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Language;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Salt in the water phase, as FSIS has it (Principles of Preservation, 2005, p. 160; read). */
final class WaterPhaseTest {

  @ParameterizedTest(name = "{0} % salt and {1} % moisture: {2} %")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          # salt | moisture | water phase | source
          3      | 50       | 5.660       | worked from the formula (derived)
          4      | 55       | 6.780       | worked from the formula (derived)
          2.5    | 55       | 4.348       | worked from the formula (derived)
          26.3   | 73.7     | 26.300      | a full brine, 100° on the salometer (read)
          13.15  | 86.85    | 13.150      | half of that, 50° (read)
          0      | 70       | 0.000       | no salt at all
          """)
  void salt_is_a_share_of_salt_and_water(String salt, String moisture, String phase, String why) {
    Worked worked =
        Sums.brineStrength(Quantity.required(salt + " %"), Quantity.required(moisture + " %"));
    assertEquals(Unit.PERCENT, worked.value().unit());
    assertEquals(phase, worked.value().value().rounded(3).toPlainString(), why);
    String sum = salt + " % / (" + salt + " % + " + moisture + " %) × 100";
    assertEquals(sum, worked.formula().in(Language.ENGLISH));
  }
}

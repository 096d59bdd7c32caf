package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.List;
import org.flitchbook.measure.Quantity;
import org.flitchbook.measure.Ratio;
import org.flitchbook.measure.Unit;
import org.flitchbook.message.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One dose on two bases: as sodium nitrite and as the ion. */
final class NitriteBasisTest {

  private static Worked sum(String ppm) {
    return Formula.of(Quantity.required(ppm + " ppm")).as(Unit.PPM);
  }

  private static String text(Worked worked) {
    return worked.formula().in(Language.ENGLISH);
  }

  private static Ratio ion(String ppm) {
    return Sums.asNitriteIon(sum(ppm)).value().value();
  }

  /** 46.00554 / 68.99531 by the IUPAC table of 1995 (read); Regulation 2023/2108 prints 0.67. */
  @Test
  void the_ion_is_two_thirds_of_sodium_nitrite() {
    Ratio abridged = Ratio.of("46.005").over(Ratio.of("68.995"));
    assertEquals("0.66679", abridged.rounded(5).toPlainString(), "weights of today, from memory");
    assertEquals("0.66679", ion("1").rounded(5).toPlainString());
    assertEquals("0.67", ion("1").rounded(2).toPlainString());
  }

  /** Worked with the weights of 1995 (derived). */
  @ParameterizedTest(name = "{0} as NaNO2 are {1} as NO2")
  @CsvSource({
    "50, 33.340", "100, 66.679", "120, 80.015", "125, 83.349", "150, 100.019", "175, 116.689",
    "200, 133.358", "37.493, 25", "44.992, 30", "67.487, 45", "74.986, 50", "82.484, 55",
    "97.482, 65", "119.977, 80", "157.470, 105"
  })
  void sodium_nitrite_as_the_ion(String sodium, BigDecimal ion) {
    BigDecimal off = ion(sodium).rounded(6).subtract(ion).abs();
    assertEquals(true, off.compareTo(new BigDecimal("0.001")) < 0, ion(sodium).toString());
  }

  @Test
  void eighty_as_the_ion_are_about_120_as_sodium_nitrite() {
    assertEquals("80", ion("120").rounded(0).toPlainString());
    assertEquals("80.02", ion("120").rounded(2).toPlainString(), "so 120 is above, not at, the 80");
  }

  @Test
  void the_formula_shows_the_molar_masses() {
    assertEquals("1 ppm × 46.00554 / 68.99531", text(Sums.asNitriteIon(sum("1"))));
  }

  @Test
  void salt_is_told_in_percent() {
    Worked worked =
        Sums.inPercent(
            Sums.ingoingDry(
                List.of(new Dose(Quantity.required("150 g"), Quantity.required("100 %"))),
                Base.skinFree(Quantity.required("5 kg"))));
    assertEquals("3 %", worked.value().toString());
    assertEquals("150 g × 100 % / 5 kg × 100", text(worked));
    assertThrows(IllegalArgumentException.class, () -> Sums.inPercent(sum("1")));
  }
}

package org.flitchbook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.Period;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How long records are kept: 9 CFR 417.5 (e)(1), and what the plan states. */
final class RetentionTest {

  private static final LocalDate SHIPPED = LocalDate.parse("2026-02-24");

  private static Retention of(String regime, String stated) {
    String key = stated.isEmpty() ? "" : ", \"retention\": \"" + stated + "\"";
    return Draft.of("plan.json")
        .with("\"reassessBy\": \"2027-01-05\"", "\"reassessBy\": \"2027-01-05\"" + key)
        .with("\"regime\": \"inspected by the state\"", "\"regime\": \"" + regime + "\"")
        .plan()
        .retention()
        .orElseThrow();
  }

  @ParameterizedTest(name = "{0}, {1}: {2}")
  @CsvSource({
    "inspected by the state,            '',       2028-02-24, 9 CFR 417.5",
    "inspected by the federal service,  1 year,   2027-02-24, plan version 3",
    "retail under a variance,           12 months, 2027-02-24, plan version 3",
    "inspected by the state,            18 month, 2027-08-24, plan version 3",
    "inspected by the state,            3 years,  2029-02-24, plan version 3"
  })
  void a_record_is_kept_from_the_last_shipment(
      String regime, String stated, LocalDate until, String rule) {
    Retention retention = of(regime, stated);
    assertEquals(until, retention.until(SHIPPED));
    assertTrue(retention.rule().startsWith(rule), retention.rule());
    assertTrue(retention.rule().contains("one year for refrigerated product"), retention.rule());
  }

  @Test
  void the_last_day_of_a_leap_year_s_february_is_kept_to_the_last_day_of_the_month() {
    Retention retention = new Retention(Period.ofYears(1), "rule");
    assertEquals(LocalDate.parse("2029-02-28"), retention.until(LocalDate.parse("2028-02-29")));
  }

  @Test
  void no_time_is_no_retention() {
    assertThrows(IllegalArgumentException.class, () -> new Retention(Period.ZERO, "rule"));
  }
}

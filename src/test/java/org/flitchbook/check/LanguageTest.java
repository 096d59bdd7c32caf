package org.flitchbook.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.flitchbook.Wording;
import org.flitchbook.message.Message;
import org.flitchbook.words.Words;
import org.junit.jupiter.api.Test;

/** A finding has no language: its messages are put into one when they are printed. */
final class LanguageTest {

  private static final String COOLING = "us.b99.cooling-1";
  private static final Words SPANISH = Wording.of("es");

  private final Finding finding =
      Bench.book()
          .rule(COOLING)
          .write(
              "smoke,08:00:00,into smoke,SM",
              "smoke,11:00:00,out of smoke",
              "chill,11:05:00,into chill,F2",
              "chill,18:00:00,out of chill")
          .core(
              "P1",
              "LG-A",
              "08:00:00..10:59:00/60 45>150; 11:00:00 131; 11:01:00..13:00:00/60 129.5>79.4;"
                  + " 13:30:00 40")
          .finding(COOLING);

  @Test
  void a_finding_of_an_english_book_is_printed_in_spanish_from_its_ids() {
    Message reason = finding.reasons().get(0);
    assertEquals("check.span.too-long", reason.id());
    assertEquals(
        "P1: at least 117.9 min from 130 °F to 80 °F, of at most 1.5 h", reason.toString());
    assertEquals(
        "P1: como mínimo 117.9 min de 130 °F a 80 °F, de un máximo de 1.5 h", reason.in(SPANISH));
    assertEquals(
        "temperatura interna de 130 °F a 80 °F",
        finding.measured().orElseThrow().quantity().in(SPANISH));
    assertEquals("enfriamiento, opción 1", finding.limit().name().in(SPANISH));
  }

  /** What is compared when a record is proved: a text that is reworded changes none of it. */
  @Test
  void a_message_carries_its_id_and_its_values_without_any_wording() {
    assertEquals(
        "{id=check.span.too-long, arguments=[{id=check.span.took, arguments=[P1, 117.908183 min,"
            + " 130 °F, 80 °F]}, 1.5 h]}",
        finding.reasons().get(0).json().toString());
    assertEquals(
        List.of("check.span.formula", "check.span.formula"),
        finding.formulas().stream().map(Message::id).toList());
  }
}

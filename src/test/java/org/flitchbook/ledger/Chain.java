package org.flitchbook.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** A ledger of three lines for the tests. */
final class Chain {

  static final LocalDate DAY = LocalDate.of(2026, 2, 24);
  static final Instant EVENING = Instant.parse("2026-02-24T22:13:05Z");
  static final String SALT_HASH = "ab".repeat(32);

  private Chain() {}

  static Event closed() {
    return Event.of(EventType.CLOSED, EVENING, "0.2.0")
        .on(DAY, 1)
        .files(
            Map.of("plan.json", "00".repeat(32), "2026-02-24/cure.csv", SALT_HASH),
            Map.of("records/2026-02-24/r1/day.pdf", "cd".repeat(32)));
  }

  static Event amended() {
    return Event.of(EventType.AMENDED, EVENING.plusSeconds(3600), "0.2.0")
        .on(DAY, 2)
        .by("MA", "the \"chill\" sheet was typed wrong");
  }

  static Event released() {
    return Event.of(EventType.RELEASED, EVENING.plusSeconds(3600), "0.2.0")
        .on(DAY, 2)
        .about("26047-B1")
        .facts(Map.of("reviewed by", "IQ"));
  }

  static byte[] bytes() {
    return Ledger.read(new byte[0]).append(List.of(closed(), amended(), released()));
  }

  static String text() {
    return new String(bytes(), UTF_8);
  }

  static Ledger read(String text) {
    return Ledger.read(text.getBytes(UTF_8));
  }

  /** The lines, each without its line feed. */
  static List<String> lines() {
    return text().lines().toList();
  }
}

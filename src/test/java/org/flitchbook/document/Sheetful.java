package org.flitchbook.document;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.flitchbook.Wording;

/** Makes small documents for tests. */
final class Sheetful {
  private Sheetful() {}

  static Document of(Block... blocks) {
    return new Document(
        "Batch record 26047-B1",
        "Juniper & treacle belly",
        Wording.ENGLISH,
        "26047-B1 r1",
        Instant.parse("2026-02-24T22:30:00Z"),
        Document.Paper.LETTER,
        new Document.Running("Wrenfold Smokeyard", "plan 3", "times in EST", ""),
        Optional.empty(),
        Arrays.asList(blocks));
  }

  static Table.Row row(String... words) {
    return new Table.Row(
        Arrays.stream(words).map(word -> new Table.Cell(Text.of(word), Tone.PLAIN)).toList());
  }

  static Table.Column column(String head, Table.Align align, int weight) {
    return new Table.Column(head, align, weight, false);
  }

  static Chart.Axis axis(double min, double max) {
    return new Chart.Axis("", min, max, List.of());
  }

  static Chart chart(List<Chart.Guide> guides, List<Chart.Marks> marks, List<Chart.Band> bands) {
    return new Chart(
        "", "in words", axis(0, 10), axis(0, 100), List.of(), guides, marks, bands, 100);
  }
}

package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.List;

/** The records of the demo day, closed into a folder for the tests that read them. */
final class DemoDay {

  static final List<String> PRINTS =
      List.of(
          "26043-L1",
          "26044-B1",
          "26045-B1",
          "26045-B2",
          "26047-B1",
          "26048-J1",
          "26055-B1",
          "day",
          "deviations");

  private DemoDay() {}

  /** Closes the demo day and gives the folder of the revision. */
  static Path close(Path out) {
    return close(Tree.DEMO, out);
  }

  static Path close(Path book, Path out) {
    Ran.of("close", book.resolve(Tree.DAY), "--out", out).expect(1);
    return out.resolve(Tree.DAY).resolve("r1");
  }
}

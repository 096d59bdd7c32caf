package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A signed record stays valid when its day is closed again, and everybody is told what became. */
final class SupersededTest {

  private static final String SUPERSEDED =
      "It is superseded by r2, made by MA: read again. Signatures in it stay valid for what it"
          + " says.";

  @TempDir private Path folder;
  private Smokeyard yard;
  private Ran again;

  @BeforeEach
  void closeAgain() {
    yard = Smokeyard.signed(folder);
    Path day = yard.book.resolve(Tree.DAY);
    Tree.edit(day.resolve("chill.csv"), "4222", "4223");
    again = Ran.of("close", day, "--as", "MA", "--reason", "read again").expect(0);
  }

  private static void says(Ran ran, String sentence) {
    assertTrue(ran.flat().contains(sentence), () -> sentence + "\n" + ran.out());
  }

  @Test
  void a_close_of_a_signed_day_says_what_is_to_be_signed_again() {
    says(
        again,
        "To be signed again: 26047-B1.pdf, box \"prepared\", which MA signed in an earlier"
            + " revision.");
    says(again, "To be signed again: 26047-B1.pdf, box \"reviewed\", which OR signed");
  }

  @Test
  void the_signed_record_is_valid_and_superseded() {
    Ran ran = Ran.of("prove", yard.record).expect(0);
    says(ran, "– " + SUPERSEDED);
    says(ran, "– The last revision of it is not signed in \"prepared\".");
    says(ran, "Signed in \"prepared\" by Maud Achterberg as maker");
  }

  @Test
  void the_book_lists_it() {
    Ran ran = Ran.of("prove", yard.book).expect(0);
    says(ran, "– " + Smokeyard.RECORD + ": " + SUPERSEDED);
    says(ran, Smokeyard.RECORD + ": The last revision of it is not signed in \"reviewed\".");
  }

  @Test
  void what_is_signed_again_is_no_longer_asked_for() {
    Path last = yard.book.resolve("records/" + Tree.DAY + "/r2/26047-B1.pdf");
    yard.ran("sign", last, "--as", "MA").expect(0);
    Ran ran = Ran.of("prove", yard.record).expect(0);
    assertFalse(ran.flat().contains("not signed in \"prepared\""), ran.out());
    says(ran, "– The last revision of it is not signed in \"reviewed\".");
  }
}

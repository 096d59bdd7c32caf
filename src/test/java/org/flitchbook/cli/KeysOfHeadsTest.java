package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A key that came into the plan since a known key last signed is named before any signature. */
final class KeysOfHeadsTest {

  private static final String NAMED = "? Plan.json has the key ";

  @TempDir private Path folder;
  private Smokeyard yard;
  private String own;

  @BeforeEach
  void copy() {
    yard = Smokeyard.signed(folder);
    own = yard.fingerprint("MA");
  }

  private Ran prove() {
    return Ran.of("prove", yard.book).expect(0);
  }

  private void thiefIn(Path keys) {
    Tree.edit(yard.book.resolve("plan.json"), ", \"key\": \"" + own + "\"", "");
    Smokeyard.key("MA", yard.book, keys);
  }

  @Test
  void the_keys_that_a_signed_head_knows_are_not_named() {
    assertFalse(prove().out().contains("no signature vouches for"), prove().out());
  }

  @Test
  void before_anybody_has_signed_every_key_is_named() {
    Ran ran = Ran.of("prove", Smokeyard.closed(folder.resolve("unsigned")).book).expect(0);
    assertTrue(ran.flat().contains(NAMED), ran.out());
  }

  @Test
  void a_retired_key_that_counts_again_is_named() {
    Tree.edit(
        yard.book.resolve("plan.json"),
        "\"key\": \"" + own + "\"",
        "\"keys\": [{\"fingerprint\": \"" + own + "\", \"until\": \"2026-02-20\"}]");
    assertTrue(Ran.of("prove", yard.book).flat().contains(NAMED + own + " as MA's"));
  }

  /** The thief closes with the new key in the plan, and signs with it: that vouches for nothing. */
  @Test
  void a_thief_who_signs_with_a_key_of_his_own_is_named_before_the_signature() {
    Path keys = folder.resolve("thief");
    thiefIn(keys);
    Path day = yard.book.resolve(Tree.DAY);
    Ran.of("close", day, "--as", "MA", "--reason", "plan").expect(0);
    Path r2 = yard.book.resolve("records/" + Tree.DAY + "/r2/26047-B1.pdf");
    Object[] sign = {
      "sign", r2, "--as", "MA", "--yes", "--keys", keys, "--passphrase-file", yard.passphrase
    };
    Ran.of(sign).expect(0);
    Ran ran = Ran.of("prove", yard.book);
    int named = ran.flat().indexOf(NAMED);
    assertTrue(named >= 0, ran.out());
    assertTrue(named < ran.flat().indexOf("has as MA's"), ran.out());
  }
}

package org.flitchbook.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The end of a ledger as people type it from paper, copy it, or hold it to a camera. */
final class StatedHeadTest {

  private static final String HASH =
      "3f2a9c1b77aa0c1d55e2aaaabbbbccccddddeeeeffff00001111222233334444";

  private static final Head HEAD = new Head(26, HASH);

  @ParameterizedTest
  @ValueSource(
      strings = {
        "26 3f2a 9c1b 77aa 0c1d 55e2",
        "26 3f2a9c1b77aa0c1d",
        " 26\t3F2A 9C1B\n77AA 0C1D 55E2 … ",
        "26, 3f2a 9c1b 77aa 0c1d 55e2",
        "line 26: 3f2a 9c1b 77aa 0c1d 55e2",
        "LINE 26 3f2a 9c1b 77aa 0c1d 55e2",
        "línea 26\n3f2a 9c1b 77aa 0c1d 55e2",
        "26 " + HASH,
        "The ledger's last line is now 26, hash " + HASH,
        "La última línea del libro mayor es ahora la 26, hash " + HASH + "\n",
        "maker: checked 3 times; ledger 26 " + HASH
      })
  void a_head_is_read_however_it_is_written(String text) {
    StatedHead stated = StatedHead.read(text).orElseThrow();
    assertTrue(stated.states(HEAD), stated::toString);
  }

  @Test
  void the_code_on_paper_holds_number_and_hash() {
    assertEquals(Optional.of(new StatedHead(26, HASH)), StatedHead.read(HEAD.forCode()));
    assertEquals("26 " + HASH.toUpperCase(Locale.ROOT), HEAD.forCode());
  }

  @Test
  void paper_has_80_bits_of_the_hash_in_groups_to_be_typed() {
    assertEquals("3f2a 9c1b 77aa 0c1d 55e2", HEAD.shortHash());
    assertTrue(StatedHead.read("26 " + HEAD.shortHash()).orElseThrow().states(HEAD));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "26",
        HASH,
        "3f2a 9c1b 77aa 0c1d 55e2",
        "26 3f2a 9c1b 77aa 0c1",
        "26 3f2a 9c1b 77aa 0c1g 55e2",
        "26 " + HASH + "0",
        "0 " + HASH,
        "-",
        "photo.png",
        "1234567890123456 " + HASH
      })
  void less_than_a_number_and_16_digits_is_none(String text) {
    assertEquals(Optional.empty(), StatedHead.read(text));
  }

  @Test
  void another_line_or_another_hash_is_another_head() {
    StatedHead stated = StatedHead.read("26 3f2a 9c1b 77aa 0c1d 55e2").orElseThrow();
    assertFalse(stated.states(new Head(27, HASH)));
    assertFalse(stated.states(new Head(26, HASH.replace("55e2", "55e3"))));
    assertFalse(stated.states(Head.NONE));
  }
}

package org.flitchbook.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A printer that doesn't know a block refuses it, so here each kind of block is printed. */
final class EveryBlockTest {

  private static final Map<Class<?>, Block> KINDS =
      SampleRecord.on(Document.Paper.A4).blocks().stream()
          .collect(Collectors.toMap(Block::getClass, Function.identity(), (one, other) -> one));

  static Stream<Class<?>> kinds() {
    return Stream.of(Block.class.getPermittedSubclasses());
  }

  @Test
  void the_sample_has_each_kind() {
    assertEquals(kinds().collect(Collectors.toSet()), Set.copyOf(KINDS.keySet()));
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void each_kind_is_printed_as_a_page_and_as_text(Class<?> kind) {
    Document document = Pages.document(KINDS.get(kind));
    assertFalse(document.toText(80).isBlank());
    Pages.print(document);
  }
}

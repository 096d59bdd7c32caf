package org.flitchbook.words;

import java.util.Map;
import org.flitchbook.json.Binder;
import org.flitchbook.json.JsonSchema;
import org.junit.jupiter.api.Test;

final class WordsSchemaTest {

  @Test
  void the_schema_of_words_is_what_the_binder_takes() {
    JsonSchema.check(
        "words.schema.json",
        "The texts of one language: templates/words/*.json",
        Binder.PLAIN.schema(WordsFile.class),
        Map.of());
  }
}

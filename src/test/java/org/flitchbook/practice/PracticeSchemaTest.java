package org.flitchbook.practice;

import java.util.Map;
import org.flitchbook.json.JsonSchema;
import org.junit.jupiter.api.Test;

final class PracticeSchemaTest {

  @Test
  void the_schema_of_practice_is_what_the_binder_takes() {
    JsonSchema.check(
        "practice.schema.json",
        "The numbers of common practice: templates/practice.json",
        PracticeFile.BINDER.schema(PracticeFile.class),
        Map.of());
  }
}

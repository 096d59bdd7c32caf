package org.flitchbook.doubt;

import java.util.Map;
import org.flitchbook.json.JsonSchema;
import org.junit.jupiter.api.Test;

final class DoubtsSchemaTest {

  @Test
  void the_schema_of_the_rules_for_dirty_data_is_what_the_binder_takes() {
    JsonSchema.check(
        "doubts.schema.json",
        "The rules for dirty data with their numbers: templates/doubts.json",
        Doubts.BINDER.schema(Doubts.RulesFile.class),
        Map.of());
  }
}

package org.flitchbook.reading;

import java.util.Map;
import org.flitchbook.json.JsonSchema;
import org.junit.jupiter.api.Test;

final class LogsSchemaTest {

  @Test
  void the_schema_of_logs_is_what_the_binder_takes() {
    JsonSchema.check(
        "logs.schema.json",
        "How to read exported probe logs: logs.json",
        LogsFile.BINDER.schema(LogsFile.class),
        Map.of());
  }
}

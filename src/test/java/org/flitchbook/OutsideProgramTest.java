package org.flitchbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.opentest4j.TestAbortedException;

final class OutsideProgramTest {

  @TempDir Path folder;

  @Test
  void a_missing_program_skips_the_test() {
    assertThrows(TestAbortedException.class, () -> find("weigher", false));
  }

  @Test
  void a_missing_program_that_is_required_fails_the_test() {
    AssertionError error = assertThrows(AssertionError.class, () -> find("weigher", true));
    assertEquals(
        "the program weigher is required and not on the PATH " + folder, error.getMessage());
  }

  @Test
  @DisabledOnOs(value = OS.WINDOWS, disabledReason = "a script is no program there")
  void a_program_on_the_path_is_found() throws IOException {
    Path program = Files.writeString(folder.resolve("weigher"), "#!/bin/sh\n");
    Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
    assertEquals(program, find("weigher", true));
  }

  private Path find(String name, boolean required) {
    return OutsideProgram.find(name, folder.toString(), required);
  }
}

package org.flitchbook.archive;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;

/** A bundle, and what only looks like one. */
final class BundleTest {

  private static byte[] zip(SourceFile file) throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    String manifest = file.sha256() + "  " + file.name() + "\n";
    try (ZipOutputStream zip = new ZipOutputStream(bytes, UTF_8)) {
      zip.putNextEntry(new ZipEntry(file.name()));
      zip.write(file.bytes());
      zip.putNextEntry(new ZipEntry("manifest.sha256"));
      zip.write(manifest.getBytes(UTF_8));
    }
    return bytes.toByteArray();
  }

  @Test
  void a_bundle_is_read_as_it_was_made() {
    SourceFile sheet = SourceFile.of("2026-02-16/cure.csv", "lot,time\n".getBytes(UTF_8));
    Bundle made = Bundle.of(Map.of("day.json", new byte[] {'{', '}'}), List.of(sheet));
    assertEquals(Optional.of(made), Bundle.read(made.zip()));
  }

  @Test
  void what_unpacks_to_a_thousand_times_its_size_is_none() throws Exception {
    byte[] small = zip(SourceFile.of("evidence/plan.json", new byte[1 << 20]));
    byte[] large = zip(SourceFile.of("evidence/plan.json", new byte[70 << 20]));
    assertTrue(Bundle.read(small).isPresent());
    assertEquals(Optional.empty(), Bundle.read(large));
  }
}

package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A record that another version of the program made, with other ids and other words, is proved.
 * That version is this one with some letters of its classes replaced.
 */
final class PatchedProgramTest {

  /** Of the same length, as a constant of a class file has its length before it. */
  private static final Map<String, String> REPLACED =
      Map.of(
          "check.span.too-long", "check.span.too-slow",
          "doubt.gap.found", "doubt.gop.found",
          "no reading of {0} from {1} to {2}", "not one value by {0}, {1} to {2}!");

  private static final String EARLIER = "0.1.9";

  @TempDir private Path folder;

  @Test
  void renamed_ids_and_other_words_are_no_change_of_a_record() throws Exception {
    Path classes = patched();
    Path out = folder.resolve("out");
    Ran closed = Child.of(classes, "close", Tree.DEMO.resolve(Tree.DAY), "--out", out);
    assertEquals(1, closed.status(), closed.out());
    List<Path> records =
        Tree.walk(out).stream().filter(file -> file.toString().endsWith(".pdf")).toList();
    assertEquals(9, records.size());
    List<String> saidOtherwise = new ArrayList<>();
    for (Path record : records) {
      Ran ran = Ran.of("prove", record).expect(0);
      assertTrue(ran.flat().contains("It was made by version " + EARLIER), ran.out());
      if (ran.flat().contains("gives its reasons in other words")) {
        saidOtherwise.add(record.getFileName().toString());
      }
    }
    assertTrue(saidOtherwise.contains("26048-J1.pdf"), saidOtherwise.toString());
    assertTrue(saidOtherwise.contains("26045-B1.pdf"), saidOtherwise.toString());
  }

  private Path patched() throws IOException, URISyntaxException {
    Path classes = Path.of(Main.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    Path copy = Tree.copy(classes, folder.resolve("classes"));
    Tree.write(copy.resolve("org/flitchbook/cli/version.txt"), EARLIER + "\n");
    int replaced = 0;
    for (Path file : Tree.walk(copy)) {
      if (file.toString().endsWith(".class")) {
        replaced += patch(file);
      }
    }
    assertTrue(replaced > 1, replaced + " classes");
    return copy;
  }

  private static int patch(Path file) throws IOException {
    String before = new String(Files.readAllBytes(file), ISO_8859_1);
    String after = before;
    for (Map.Entry<String, String> each : REPLACED.entrySet()) {
      assertEquals(each.getKey().length(), each.getValue().length());
      after = after.replace(each.getKey(), each.getValue());
    }
    if (after.equals(before)) {
      return 0;
    }
    Files.write(file, after.getBytes(ISO_8859_1));
    return 1;
  }
}

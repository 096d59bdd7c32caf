package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.lang.reflect.Method;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.flitchbook.SeededRun;
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
    assertEquals(1, close(classes, out));
    List<Path> records =
        Tree.walk(out).stream().filter(file -> file.toString().endsWith(".pdf")).toList();
    assertEquals(9, records.size());
    List<String> saidOtherwise = new ArrayList<>();
    for (Path record : SeededRun.isWhole() ? records : some(records)) {
      Ran ran = Ran.of("prove", record).expect(0);
      assertTrue(ran.flat().contains("It was made by version " + EARLIER), ran.out());
      if (ran.flat().contains("gives its reasons in other words")) {
        saidOtherwise.add(record.getFileName().toString());
      }
    }
    assertTrue(saidOtherwise.contains("26048-J1.pdf"), saidOtherwise.toString());
    assertTrue(saidOtherwise.contains("26045-B1.pdf"), saidOtherwise.toString());
  }

  /** Those of which the other words are known, and the one with all lots. */
  private static List<Path> some(List<Path> records) {
    List<String> names = List.of("26048-J1.pdf", "26045-B1.pdf", "day.pdf");
    return records.stream().filter(each -> names.contains(each.getFileName().toString())).toList();
  }

  /** Closes the demo day with the classes of a folder, beside those of this program. */
  private static int close(Path classes, Path out) throws Exception {
    try (Patched loader = new Patched(classes)) {
      Class<?> main = loader.loadClass(Main.class.getName());
      assertNotSame(Main.class, main);
      Method run =
          main.getDeclaredMethod("run", String[].class, PrintStream.class, PrintStream.class);
      run.setAccessible(true);
      PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream(), false, UTF_8);
      String[] words = {"close", Tree.DEMO.resolve(Tree.DAY).toString(), "--out", out.toString()};
      return (int) run.invoke(null, words, nowhere, nowhere);
    }
  }

  /** Finds the program and what it reads in a folder only, and its libraries where all do. */
  private static final class Patched extends URLClassLoader {

    Patched(Path classes) throws IOException {
      super(new URL[] {classes.toUri().toURL()}, Main.class.getClassLoader());
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      synchronized (getClassLoadingLock(name)) {
        if (!name.startsWith("org.flitchbook.")) {
          return super.loadClass(name, resolve);
        }
        Class<?> loaded = findLoadedClass(name);
        return loaded != null ? loaded : findClass(name);
      }
    }

    @Override
    public URL getResource(String name) {
      URL own = findResource(name);
      return own != null ? own : super.getResource(name);
    }
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

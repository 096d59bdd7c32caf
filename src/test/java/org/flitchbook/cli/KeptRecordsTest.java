package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * A closed and signed book of each released version is proved by every later version. A change of
 * judging that breaks one needs its entry among the changes of judging, never a change of the book.
 */
final class KeptRecordsTest {

  private static final Path KEPT = Path.of("src", "test", "resources", "org", "flitchbook", "kept");

  private static final long SEED = 5;

  private static final List<String> ENGLISH =
      List.of("findings are the same", "It was made by version 0.1.0 of the program");
  private static final List<String> SPANISH =
      List.of("resultados son los mismos", "Lo hizo la versión 0.1.0 del programa");

  @TempDir private static Path folder;

  private static List<Path> books() throws IOException {
    try (Stream<Path> all = Files.walk(KEPT)) {
      return all.filter(file -> file.toString().endsWith(".zip")).sorted().toList();
    }
  }

  /** Unpacks a book. */
  private static Path unpacked(Path zip) throws IOException {
    Path into = folder.resolve(KEPT.relativize(zip).toString().replace(".zip", ""));
    for (Map.Entry<String, byte[]> file : Zipped.read(zip).entrySet()) {
      Path target = into.resolve(file.getKey());
      if (file.getKey().endsWith("/")) {
        Files.createDirectories(target);
      } else {
        Files.createDirectories(target.getParent());
        Files.write(target, file.getValue());
      }
    }
    return into.resolve(zip.getFileName().toString().replace(".zip", ""));
  }

  @Test
  void a_book_of_each_released_version_is_kept() throws IOException {
    List<String> names = books().stream().map(zip -> KEPT.relativize(zip).toString()).toList();
    assertEquals(List.of("0.1.0/fen.zip", "0.1.0/wrenfold.zip"), names);
  }

  @TestFactory
  Stream<DynamicTest> each_kept_book_and_each_of_its_records_is_proved() throws IOException {
    List<DynamicTest> tests = new ArrayList<>();
    for (Path zip : books()) {
      proofs(KEPT.relativize(zip).toString(), unpacked(zip)).forEach(tests::add);
    }
    return tests.stream();
  }

  private static Stream<DynamicTest> proofs(String name, Path book) {
    List<Path> records =
        Tree.walk(book.resolve("records")).stream()
            .filter(file -> file.toString().endsWith(".pdf"))
            .toList();
    assertFalse(records.isEmpty());
    return Stream.concat(
        Stream.of(DynamicTest.dynamicTest(name, () -> Ran.of("prove", book).expect(0))),
        some(name, records).stream()
            .map(
                pdf ->
                    DynamicTest.dynamicTest(
                        name + " " + book.relativize(pdf), () -> assertProved(pdf))));
  }

  /** The records of whole days, on which every lot stands, and a third of all. */
  private static Set<Path> some(String name, List<Path> records) {
    Set<Path> some = new TreeSet<>(SeededRun.share("Kept records of " + name, SEED, records, 3));
    records.stream().filter(pdf -> pdf.endsWith("day.pdf")).forEach(some::add);
    return some;
  }

  private static void assertProved(Path pdf) {
    Ran ran = Ran.of("prove", pdf).expect(0);
    boolean isSpanish = pdf.startsWith(folder.resolve("0.1.0/fen"));
    for (String told : isSpanish ? SPANISH : ENGLISH) {
      assertTrue(ran.flat().contains(told), () -> told + "\n" + ran.out());
    }
  }
}

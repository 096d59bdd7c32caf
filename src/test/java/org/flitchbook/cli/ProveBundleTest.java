package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** A bundle far from its book is proved by itself, also where its manifest was written again. */
final class ProveBundleTest {

  @TempDir private Path folder;
  private Path bundle;

  @BeforeEach
  void takeAway() throws IOException {
    Path book = Tree.closedExample(folder);
    bundle = folder.resolve("sent.zip");
    Files.copy(book.resolve("records/" + Tree.DAY + "/r1/bundle.zip"), bundle);
  }

  @Test
  void an_untouched_bundle_is_proved() {
    Ran ran = Ran.of("prove", bundle).expect(0);
    String whole = "✓ Its 6 records are what its manifest says; each JSON is what its PDF carries";
    assertTrue(ran.flat().contains(whole), ran.out());
    assertTrue(ran.flat().contains("✓ 26047-B1.pdf: Judged again from what it carries"), ran.out());
    assertEquals(
        "bundle", Ran.of("prove", bundle, "--json").expect(0).json().get("proves").asText());
  }

  @Test
  void a_bundle_that_lies_in_its_book_is_held_against_the_ledger() {
    Path filed = folder.resolve("book/records/" + Tree.DAY + "/r1/bundle.zip");
    Ran ran = Ran.of("prove", filed).expect(0);
    assertTrue(ran.flat().contains("It is the one that the ledger of its book lists."), ran.out());
  }

  private record Touched(String name, Consumer<Map<String, byte[]>> deed, String said) {}

  @TestFactory
  Stream<DynamicTest> a_changed_file_is_noticed_though_the_manifest_agrees() {
    return Stream.of(
            new Touched(
                "a JSON",
                files -> turn(files, "records/26047-B1.json", "\"met\"", "\"not met\""),
                "✗ 26047-B1.json: It is not the JSON that 26047-B1.pdf carries."),
            new Touched(
                "a sheet",
                files -> turn(files, "evidence/2026-02-16/cure.csv", "11.5", "11.6"),
                "carries another 2026-02-16/cure.csv than the bundle of its revision holds."),
            new Touched(
                "a PDF that is gone",
                files -> files.remove("records/day.pdf"),
                "✗ day.json: No PDF of its revision belongs to it."),
            new Touched(
                "a file beside the records",
                files -> files.put("records/note.txt", "met".getBytes(UTF_8)),
                "✗ note.txt: No PDF of its revision belongs to it."))
        .map(row -> DynamicTest.dynamicTest(row.name(), () -> touch(row)));
  }

  private void touch(Touched row) throws Exception {
    Map<String, byte[]> files = new TreeMap<>(Zipped.read(bundle));
    row.deed().accept(files);
    Path touched = folder.resolve("touched.zip");
    Zipped.write(touched, files);
    Ran ran = Ran.of("prove", touched).expect(1);
    assertTrue(ran.flat().contains(row.said()), () -> row.said() + "\n" + ran.out());
  }

  private static void turn(Map<String, byte[]> files, String name, String old, String now) {
    String text = new String(files.get(name), UTF_8);
    assertTrue(text.contains(old), name);
    files.put(name, text.replace(old, now).getBytes(UTF_8));
  }

  @Test
  void a_zip_that_is_no_bundle_is_not_as_it_was() throws Exception {
    Path other = folder.resolve("other.zip");
    Map<String, byte[]> files = Map.of("day.pdf", new byte[] {1});
    Zipped.pack(other, files);
    assertIsNoBundle(other);
    Zipped.write(other, files);
    assertIsNoBundle(other);
  }

  private static void assertIsNoBundle(Path zip) {
    Ran ran = Ran.of("prove", zip).expect(1);
    assertTrue(ran.flat().contains("✗ It is no bundle of records, or not what its own"), ran.out());
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.flitchbook.practice.Practice;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A book's own numbers of common practice win over the tool's. */
final class OwnPracticeTest {

  @TempDir Path folder;

  /** What is said of the demo day with a text of the book's own file changed. */
  private String said(String old, String now, Object... more) {
    Path book = Tree.demo(folder.resolve(now.replaceAll("\\W", "")));
    Tree.write(book.resolve(Practice.FILE), Tree.text(Path.of(Practice.FILE)));
    Tree.edit(book.resolve(Practice.FILE), old, now);
    Object[] words = {"check", book.resolve(Tree.DAY)};
    Ran ran = Ran.of(Stream.concat(Stream.of(words), Stream.of(more)).toArray());
    assertTrue(ran.status() <= 1, ran.err());
    return ran.flat();
  }

  private static int count(String text, String part) {
    return text.split(part, -1).length - 1;
  }

  @Test
  void what_is_near_to_a_limit_is_a_matter_of_the_book() {
    String few = said("\"below\": \"10 %\"", "\"below\": \"1 %\"", "--json");
    String many = said("\"below\": \"10 %\"", "\"below\": \"99 %\"", "--json");
    assertEquals(0, count(few, "a near miss"));
    assertTrue(count(many, "a near miss") > 0, many);
  }

  @Test
  void what_is_a_gap_is_a_matter_of_the_book() {
    String tools = said("\"5 min\"", "\"300 s\"");
    String patient = said("\"5 min\"", "\"2 h\"");
    assertTrue(tools.contains("no reading of P1 from 14:11 to 14:58"), tools);
    assertEquals(0, count(patient, "no reading of P1 from 14:11 to 14:58"));
  }

  @Test
  void a_broken_file_of_its_own_is_said_with_its_place() {
    Path book = Tree.demo(folder);
    Tree.write(book.resolve(Practice.FILE), "{\"flitchbook\": 1}");
    Ran ran = Ran.of("check", book.resolve(Tree.DAY)).expect(3);
    assertTrue(ran.err().contains("templates/practice.json:1:gap: found no \"gap\""), ran.err());
  }
}

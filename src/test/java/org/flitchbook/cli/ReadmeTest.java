package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What README.md tells people to type does what it tells them. */
final class ReadmeTest {

  private static final Pattern FENCED = Pattern.compile("(?ms)^```(\\w*)\n(.*?)^```$");
  private static final Pattern LOT = Pattern.compile("\\d{5}-[A-Z]\\d");
  private static final Pattern WRITTEN = Pattern.compile("`(out/[^`]+)`( and one for each other)?");

  private static final String README = Tree.text(Path.of("README.md"));

  @TempDir private static Path folder;
  private static Ran ran;

  @BeforeAll
  static void run() {
    List<String> words = List.of(commands().get(0).split(" ", -1));
    assertEquals("./flitchbook", words.get(0));
    Object[] args =
        words.stream()
            .skip(1)
            .map(word -> word.equals("out") ? folder.resolve("out").toString() : word)
            .toArray();
    ran = Ran.of(args);
  }

  /** The blocks without a language. */
  private static List<String> commands() {
    return blocks("").map(String::strip).toList();
  }

  private static Stream<String> blocks(String language) {
    return FENCED
        .matcher(README)
        .results()
        .filter(block -> block.group(1).equals(language))
        .map(block -> block.group(2));
  }

  @Test
  void there_are_two_commands_and_the_first_comes_before_all_else() {
    assertEquals(
        List.of("./flitchbook close demo-data/wrenfold/2026-02-24 --out out", "./mvnw -B verify"),
        commands());
    Matcher first = FENCED.matcher(README);
    assertTrue(first.find());
    assertEquals(commands().get(0), first.group(2).strip());
  }

  @Test
  void the_first_ends_with_the_status_that_the_page_tells() {
    assertTrue(README.contains("so the command ends with exit status 1."));
    assertEquals(1, ran.status());
    assertEquals("", ran.err());
  }

  @Test
  void it_writes_the_files_that_the_page_lists() {
    Set<String> told = new TreeSet<>();
    WRITTEN.matcher(README).results().forEach(file -> told.addAll(each(file)));
    Set<String> written = new TreeSet<>(Tree.names(folder));
    assertEquals(told, written);
  }

  /** A file "and one for each other lot" stands for that of each lot that the page names. */
  private static List<String> each(MatchResult file) {
    String name = file.group(1);
    return file.group(2) == null
        ? List.of(name)
        : lots().map(lot -> LOT.matcher(name).replaceAll(lot)).toList();
  }

  private static Stream<String> lots() {
    String sentence =
        README
            .lines()
            .filter(line -> line.startsWith("The lots are "))
            .findFirst()
            .orElseThrow(() -> new AssertionError("README.md does not name the lots"));
    return LOT.matcher(sentence).results().map(MatchResult::group);
  }

  @Test
  void it_says_what_the_page_shows() {
    List<String> said = ran.out().lines().toList();
    String shown =
        blocks("text")
            .filter(block -> block.contains("NOT MET"))
            .findFirst()
            .orElseThrow(() -> new AssertionError("README.md shows nothing of what is said"));
    shown
        .lines()
        .filter(line -> !line.isBlank())
        .forEach(line -> assertTrue(said.contains(line), line));
  }
}

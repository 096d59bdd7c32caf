package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.flitchbook.SeededRun;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A day is closed by other machines, as it were: each file of each is the same. By default it is
 * the day of the example book; in the whole run the demo day.
 */
@Tag("machines")
final class SameBytesTest {

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource({
    "tr, TR, Asia/Kathmandu,    ISO-8859-9,  -XX:+UseSerialGC",
    "ar, EG, UTC,               UTF-8,       -XX:TieredStopAtLevel=1",
    "ja, JP, Pacific/Apia,      windows-31j, -XX:+UseParallelGC -XX:TieredStopAtLevel=1",
  })
  void another_locale_zone_charset_and_way_of_running_give_the_same_bytes(
      String language, String country, String zone, String charset, String way) throws Exception {
    Path home = Files.createDirectory(folder.resolve("home"));
    Path out = folder.resolve("out");
    List<String> options = new ArrayList<>(List.of(way.split(" ", -1)));
    options.addAll(
        List.of(
            "-Duser.home=" + home,
            "-Duser.language=" + language,
            "-Duser.country=" + country,
            "-Duser.timezone=" + zone,
            "-Dfile.encoding=" + charset));
    boolean demo = SeededRun.isWhole();
    Path book = demo ? Tree.DEMO : Tree.example(folder);
    Path here = demo ? DemoDay.records() : closedHere(book);
    Child.elsewhere(options, "close", book.resolve(Tree.DAY), "--out", out).expect(demo ? 1 : 0);
    assertEquals(Tree.hashes(here), Tree.hashes(out.resolve(Tree.DAY).resolve("r1")));
    assertEquals(List.of(), Tree.names(home), "a close leaves nothing in the home folder");
  }

  private Path closedHere(Path book) {
    Path out = folder.resolve("here");
    Ran.of("close", book.resolve(Tree.DAY), "--out", out).expect(0);
    return out.resolve(Tree.DAY).resolve("r1");
  }
}

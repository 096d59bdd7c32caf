package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo day is closed by other machines, as it were: each file of each is the same. */
final class SameBytesTest {

  @TempDir private static Path folder;
  private static Map<String, String> here;

  @BeforeAll
  static void close() {
    DemoDay.close(folder.resolve("here"));
    here = Tree.hashes(folder.resolve("here"));
  }

  @ParameterizedTest
  @CsvSource({
    "tr, TR, Asia/Kathmandu,    ISO-8859-9,  -XX:+UseSerialGC",
    "ar, EG, UTC,               UTF-8,       -XX:TieredStopAtLevel=1",
    "ja, JP, Pacific/Apia,      windows-31j, -XX:+UseParallelGC",
  })
  void another_locale_zone_charset_and_way_of_running_give_the_same_bytes(
      String language, String country, String zone, String charset, String way) throws Exception {
    Path out = folder.resolve(language);
    List<String> words =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            way,
            "-Duser.language=" + language,
            "-Duser.country=" + country,
            "-Duser.timezone=" + zone,
            "-Dfile.encoding=" + charset,
            "-cp",
            classPath(),
            Main.class.getName(),
            "close",
            Tree.DEMO.resolve(Tree.DAY).toString(),
            "--out",
            out.toString());
    run(words);
    assertEquals(here, Tree.hashes(out));
  }

  private static void run(List<String> words) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
    builder.environment().put("LC_ALL", "C");
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertEquals(1, process.waitFor(), said);
  }

  /** Where the tests are run by a loader of their own, the machine's class path doesn't name it. */
  private static String classPath() throws Exception {
    if (Main.class.getClassLoader() instanceof URLClassLoader loader) {
      List<String> files = new ArrayList<>();
      for (URL url : loader.getURLs()) {
        files.add(Path.of(url.toURI()).toString());
      }
      return String.join(File.pathSeparator, files);
    }
    return System.getProperty("java.class.path");
  }
}

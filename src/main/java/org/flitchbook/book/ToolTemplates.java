package org.flitchbook.book;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URI;
import java.net.URL;
import java.net.URLConnection;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.jar.JarEntry;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;

/** The templates that the program brings along: in its jar, or in the folder of its classes. */
final class ToolTemplates {

  private ToolTemplates() {}

  static List<SourceFile> all() {
    try {
      URLConnection classes = resource(BookFolder.TEMPLATES + "classes.json").openConnection();
      List<SourceFile> files = new ArrayList<>();
      for (String name : classes instanceof JarURLConnection jar ? inJar(jar) : inFolder(classes)) {
        try (InputStream in = resource(name).openStream()) {
          files.add(SourceFile.of(name, in.readAllBytes()));
        }
      }
      return files;
    } catch (IOException broken) {
      throw new UncheckedIOException("the tool's own templates can't be read", broken);
    }
  }

  private static URL resource(String name) {
    return Objects.requireNonNull(ToolTemplates.class.getResource("/" + name), name);
  }

  private static List<String> inJar(JarURLConnection jar) throws IOException {
    return jar.getJarFile().stream()
        .filter(entry -> !entry.isDirectory())
        .map(JarEntry::getName)
        .filter(name -> name.startsWith(BookFolder.TEMPLATES))
        .sorted()
        .toList();
  }

  private static List<String> inFolder(URLConnection classes) throws IOException {
    Path folder = Path.of(URI.create(classes.getURL().toString())).resolveSibling("");
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile)
          .map(file -> BookFolder.TEMPLATES + folder.relativize(file).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }
}

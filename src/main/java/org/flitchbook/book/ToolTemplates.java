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
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;

/** The templates that the program brings along: in its jar, or in the folder of its classes. */
final class ToolTemplates {

  private ToolTemplates() {}

  static List<SourceFile> all() {
    try {
      URL classes =
          Objects.requireNonNull(
              ToolTemplates.class.getResource("/" + BookFolder.TEMPLATES + "classes.json"),
              "no templates");
      URLConnection connection = classes.openConnection();
      List<SourceFile> files =
          connection instanceof JarURLConnection jar
              ? inJar(jar.getJarFile())
              : inFolder(
                  Objects.requireNonNull(Path.of(URI.create(classes.toString())).getParent()));
      files.sort(Comparator.comparing(SourceFile::name));
      return files;
    } catch (IOException broken) {
      throw new UncheckedIOException("the tool's own templates can't be read", broken);
    }
  }

  private static List<SourceFile> inJar(JarFile jar) throws IOException {
    List<SourceFile> files = new ArrayList<>();
    for (JarEntry entry : jar.stream().toList()) {
      if (!entry.isDirectory() && entry.getName().startsWith(BookFolder.TEMPLATES)) {
        try (InputStream in = jar.getInputStream(entry)) {
          files.add(SourceFile.of(entry.getName(), in.readAllBytes()));
        }
      }
    }
    return files;
  }

  private static List<SourceFile> inFolder(Path folder) throws IOException {
    List<SourceFile> files = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        files.add(SourceFile.of(BookFolder.TEMPLATES + name, Files.readAllBytes(file)));
      }
    }
    return files;
  }
}

package org.flitchbook.desk;

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

/** The templates that the tool brings along: in its jar, or in the folder of its classes. */
final class Templates {

  static final String FOLDER = "templates/";

  private Templates() {}

  static List<SourceFile> ofTheTool() {
    try {
      URL classes =
          Objects.requireNonNull(
              Templates.class.getResource("/" + FOLDER + "classes.json"), "no templates");
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
      if (!entry.isDirectory() && entry.getName().startsWith(FOLDER)) {
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
        files.add(SourceFile.of(FOLDER + name, Files.readAllBytes(file)));
      }
    }
    return files;
  }
}

package org.flitchbook;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.File;
import java.io.IOException;
import java.io.StringWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** A small house with the root package {@code planted}, compiled from text into a folder. */
final class PlantedHouse {

  static final String ROOT = "planted";

  private final Path folder;
  private final List<Path> earlier;
  private final List<Path> sources = new ArrayList<>();

  PlantedHouse(Path folder) {
    this(folder, List.of());
  }

  private PlantedHouse(Path folder, List<Path> earlier) {
    this.folder = folder;
    this.earlier = earlier;
  }

  /** A house of what was built here, and of what is added to it, which alone is compiled. */
  PlantedHouse extendedIn(Path other) {
    return new PlantedHouse(other, List.of(classes()));
  }

  private Path classes() {
    return folder.resolve("classes");
  }

  /** Adds a package with its floor. */
  PlantedHouse room(String name, int floor, String door, String... mayImport) throws IOException {
    return type(ROOT + "." + name + ".package-info", roomInfo(name, floor, door, mayImport));
  }

  /** The text of a {@code package-info} down to the line with the package. */
  static String roomInfo(String name, int floor, String door, String... mayImport) {
    String names = Stream.of(mayImport).map(n -> '"' + n + '"').collect(Collectors.joining(", "));
    return "@org.flitchbook.Floor(name = \"%s\", floor = %d, mayImport = {%s}, door = \"%s\")"
        .formatted(name, floor, names, door);
  }

  /**
   * Adds a class by its full name.
   *
   * @param body what follows the line with the package, or, for a {@code package-info}, precedes it
   */
  PlantedHouse type(String fullName, String body) throws IOException {
    String line = "package " + fullName.substring(0, fullName.lastIndexOf('.')) + ";\n";
    String text = fullName.endsWith(".package-info") ? body + "\n" + line : line + body;
    Path file = folder.resolve(fullName.replace('.', '/') + ".java");
    Files.createDirectories(file.getParent());
    sources.add(Files.writeString(file, text));
    return this;
  }

  PlantedHouse types(Map<String, String> bodies) throws IOException {
    for (Map.Entry<String, String> entry : bodies.entrySet()) {
      type(entry.getKey(), entry.getValue());
    }
    return this;
  }

  /** Compiles all that was added. */
  JavaClasses build() throws IOException {
    Path classes = Files.createDirectories(classes());
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter said = new StringWriter();
    try (StandardJavaFileManager files =
        compiler.getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8)) {
      List<String> options = List.of("-d", classes.toString(), "-cp", classPath(), "-proc:none");
      boolean compiled =
          compiler
              .getTask(said, files, null, options, null, files.getJavaFileObjectsFromPaths(sources))
              .call();
      if (!compiled) {
        throw new AssertionError("a planted house does not compile: " + said);
      }
    }
    return new ClassFileImporter()
        .importPaths(Stream.concat(earlier.stream(), Stream.of(classes)).toList());
  }

  private String classPath() {
    String url = Floor.class.getProtectionDomain().getCodeSource().getLocation().toString();
    return Stream.concat(Stream.of(Path.of(URI.create(url))), earlier.stream())
        .map(Path::toString)
        .collect(Collectors.joining(File.pathSeparator));
  }
}

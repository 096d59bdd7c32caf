package org.flitchbook.plan;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;

/** A plan and the project's own templates, each with places changed as a test asks. */
record Draft(Map<String, String> files) {

  static final String PLAN = "plan.json";
  static final String US = "templates/limits/us.json";
  static final String RETAIL = "templates/limits/us-retail.json";
  static final String CLASSES = "templates/classes.json";
  static final String PRACTICE = "templates/practice.json";

  private static final Path RESOURCES =
      Path.of("src", "test", "resources", "org", "flitchbook", "plan");

  /** The plan of that name among the test's resources. */
  static Draft of(String plan) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put(PLAN, text(RESOURCES.resolve(plan)));
    for (String template : List.of(US, RETAIL, CLASSES, PRACTICE)) {
      files.put(template, text(Path.of(template)));
    }
    return new Draft(files);
  }

  /** The small plan of the Wrenfold Smokeyard with two products. */
  static Draft example() {
    return of("plan.json");
  }

  /**
   * The same with the first place of a text changed.
   *
   * @throws IllegalArgumentException where the file has no such text, so that no test goes stale
   */
  Draft with(String file, String found, String changed) {
    String old = files.getOrDefault(file, "");
    int at = old.indexOf(found);
    if (at < 0) {
      throw new IllegalArgumentException(file + " has no " + found);
    }
    return whole(file, old.substring(0, at) + changed + old.substring(at + found.length()));
  }

  Draft with(String found, String changed) {
    return with(PLAN, found, changed);
  }

  Draft whole(String file, String text) {
    Map<String, String> copy = new LinkedHashMap<>(files);
    copy.put(file, text);
    return new Draft(copy);
  }

  Draft without(String file) {
    Map<String, String> copy = new LinkedHashMap<>(files);
    copy.remove(file);
    return new Draft(copy);
  }

  PlanRead read() {
    List<SourceFile> templates =
        files.keySet().stream().filter(name -> !name.equals(PLAN)).map(this::source).toList();
    return Plans.read(source(PLAN), templates, List.of());
  }

  /** The plan, which must be without fault. */
  Plan plan() {
    PlanRead read = read();
    return read.plan().orElseThrow(() -> new AssertionError(String.join("\n", faults(read))));
  }

  /** What is wrong with it, as a person reads it. */
  List<String> faults() {
    PlanRead read = read();
    if (read.plan().isPresent() == !read.faults().isEmpty()) {
      throw new AssertionError("a plan beside its faults, or neither");
    }
    return faults(read);
  }

  private static List<String> faults(PlanRead read) {
    return read.faults().stream().map(Fault::toString).toList();
  }

  private SourceFile source(String name) {
    return SourceFile.of(name, files.getOrDefault(name, "").getBytes(StandardCharsets.UTF_8));
  }

  static String text(Path file) {
    try {
      return Files.readString(file, StandardCharsets.UTF_8);
    } catch (IOException unread) {
      throw new UncheckedIOException(unread);
    }
  }
}

package org.flitchbook.sums;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.tools.Diagnostic;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A limit as NO2 and a figure as NaNO2 are half as much apart again; the compiler keeps watch. */
final class UnmixableTest {

  private static final Path CLASSES =
      Path.of(
          URI.create(
              SodiumNitrite.class.getProtectionDomain().getCodeSource().getLocation().toString()));

  @TempDir Path folder;

  private static final class Source extends SimpleJavaFileObject {

    private final String text;

    Source(String text) {
      super(URI.create("string:///Mixed.java"), Kind.SOURCE);
      this.text = text;
    }

    @Override
    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
      return text;
    }
  }

  @ParameterizedTest(name = "{0} compiles: {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          sodium.isAbove(sodium)                    | true
          ion.isAbove(ion)                          | true
          sodium.asNitriteIon().isAbove(ion)        | true
          ion.asSodiumNitrite().isBelow(sodium)     | true
          sodium.isAbove(ion)                       | false
          ion.isBelow(sodium)                       | false
          sodium.compareTo(ion) > 0                 | false
          ion.isAbove(sodium.amount())              | false
          """)
  void one_basis_cannot_be_held_against_the_other(String expression, boolean compiles)
      throws Exception {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    assumeTrue(compiler != null, "a JDK");
    List<String> errors = errors(compiler, expression);
    assertEquals(compiles, errors.isEmpty(), errors.toString());
    assertTrue(
        errors.stream().allMatch(error -> error.contains("incompatible types")), errors.toString());
  }

  private List<String> errors(JavaCompiler compiler, String expression) throws Exception {
    String text =
        "import org.flitchbook.sums.*; class Mixed { boolean is(SodiumNitrite sodium, NitriteIon"
            + " ion) { return "
            + expression
            + "; } }";
    DiagnosticCollector<JavaFileObject> found = new DiagnosticCollector<>();
    try (StandardJavaFileManager files =
        compiler.getStandardFileManager(found, Locale.ROOT, StandardCharsets.UTF_8)) {
      compiler
          .getTask(
              null,
              files,
              found,
              List.of("-proc:none", "-cp", CLASSES.toString(), "-d", folder.toString()),
              null,
              List.of(new Source(text)))
          .call();
    }
    return found.getDiagnostics().stream()
        .filter(each -> each.getKind() == Diagnostic.Kind.ERROR)
        .map(each -> each.getMessage(Locale.ROOT))
        .toList();
  }
}

package org.flitchbook.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Tables that somebody else wrote, with what they should be read as: csv-spectrum 2.0.0. */
final class SpectrumTest {

  private static final Path SPECTRUM = Path.of("src", "test", "resources", "csv-spectrum");
  private static final ObjectMapper JSON = new ObjectMapper();

  private static final class Records implements Rows {
    private final List<Map<String, String>> records = new ArrayList<>();
    private List<String> words = List.of();

    @Override
    public void heading(Row heading, char delimiter) {
      words = heading.cells();
    }

    @Override
    public void row(Row row) {
      Map<String, String> cells = new LinkedHashMap<>();
      words.forEach(word -> cells.put(word, row.cell(words.indexOf(word))));
      records.add(cells);
    }
  }

  static Stream<String> names() throws IOException {
    try (Stream<Path> files = Files.list(SPECTRUM.resolve("csvs"))) {
      return files
          .map(file -> file.getFileName().toString().replace(".csv", ""))
          .sorted()
          .toList()
          .stream();
    }
  }

  private static List<Map<String, String>> read(String name) throws IOException {
    byte[] bytes = Files.readAllBytes(SPECTRUM.resolve("csvs").resolve(name + ".csv"));
    Records read = new Records();
    List<Fault> faults = Tables.read(SourceFile.of(name, bytes), Layout.OPEN, read);
    assertEquals(List.of(), faults);
    return read.records;
  }

  private static List<Map<String, String>> wanted(String name) throws IOException {
    JsonNode tree =
        JSON.readTree(Files.readAllBytes(SPECTRUM.resolve("json").resolve(name + ".json")));
    JsonNode list = tree.isArray() ? tree : JSON.createArrayNode().add(tree);
    return JSON.convertValue(list, new TypeReference<>() {});
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_table_is_read_as_its_JSON_says(String name) throws IOException {
    List<Map<String, String>> wanted = wanted(name);
    if (name.equals("location_coordinates")) {
      // The collection itself has another number in the table than in the JSON.
      wanted.get(0).put("Contact Phone Number", "2095257564");
    }
    assertEquals(wanted, read(name));
  }

  @Test
  void the_whole_collection_is_there() throws IOException {
    assertEquals(12, names().count());
  }
}

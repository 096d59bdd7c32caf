package org.flitchbook.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.json.Parsed;

/** Reads the file of one language. */
final class WordsReader {

  private static final String EXTENSION = ".json";

  private WordsReader() {}

  static Optional<Words> read(SourceFile file, List<Fault> faults) {
    List<Fault> own = new ArrayList<>();
    Parsed parsed = Json.read(file.name(), file.bytes());
    own.addAll(parsed.faults());
    Optional<Words> words =
        parsed.object().flatMap(object -> words(Fields.of(object, own), language(file)));
    faults.addAll(own);
    return own.isEmpty() ? words : Optional.empty();
  }

  /** The language that the name of a file states. */
  static String language(SourceFile file) {
    String name = file.baseName();
    return name.endsWith(EXTENSION) ? name.substring(0, name.length() - EXTENSION.length()) : name;
  }

  private static Optional<Words> words(Fields file, String named) {
    if (file.optionalWhole("flitchbook").orElse(0) != 1) {
      file.fault("flitchbook", "another version", "1");
    }
    String language = file.text("language");
    if (file.has("language") && (!language.equals(named) || !Words.isTag(language))) {
      file.fault(
          "language", "\"" + language + "\"", "a language such as es, as the file is called");
    }
    file.text("made");
    file.text("by");
    Map<String, String> texts = new LinkedHashMap<>();
    file.object("words").ifPresent(words -> texts.putAll(texts(words)));
    Map<String, String> names = new LinkedHashMap<>();
    file.optionalObject("names").ifPresent(called -> names.putAll(texts(called)));
    file.end();
    return Words.isTag(language)
        ? Optional.of(new Words(language, texts, names))
        : Optional.empty();
  }

  private static Map<String, String> texts(Fields words) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (Map.Entry<String, Node> each : words.object().members().entrySet()) {
      if (each.getValue() instanceof Node.Text text) {
        texts.put(each.getKey(), text.value());
      } else {
        words.fault(each.getKey(), each.getValue().shown(), "a text");
      }
    }
    return texts;
  }
}

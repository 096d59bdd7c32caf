package org.flitchbook.words;

import static org.flitchbook.message.Message.say;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Checked;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
import org.flitchbook.json.Node;
import org.flitchbook.message.Message;

/**
 * The texts of one language, {@code templates/words/es.json}.
 *
 * @param language a BCP 47 tag, as the file is called
 * @param words texts by their ids, with the places {0}, {1} … for what is put in
 * @param names what the limits, options and exemptions of the rule sets are called, by the names
 *     that the rule sets give them
 */
record WordsFile(
    Fields object,
    @Key(least = 1, most = 1) int flitchbook,
    String language,
    String made,
    String by,
    Map<String, String> words,
    @Key(optional = true) Map<String, String> names)
    implements Checked {

  private static final String FOLDER = "templates/words/";
  private static final String EXTENSION = ".json";

  static Binder.Bound<WordsFile> read(SourceFile file) {
    return Binder.PLAIN.read(file, WordsFile.class);
  }

  static String name(String language) {
    return FOLDER + language + EXTENSION;
  }

  /** The language that the name of a file states; empty for a file of anything else. */
  static Optional<String> language(String file) {
    return file.startsWith(FOLDER) && file.endsWith(EXTENSION)
        ? Optional.of(file.substring(FOLDER.length(), file.length() - EXTENSION.length()))
        : Optional.empty();
  }

  @Override
  public void check(Fields file) {
    boolean fits = language(file.place().file()).filter(language::equals).isPresent();
    if (file.has("language") && !(fits && Words.isTag(language))) {
      file.fault(
          "language",
          say("json.text", "\"{0}\"", language),
          say("words.language", "a language such as es, as the file is called"));
    }
  }

  /** Refuses a text of an id that the program does not say, or with other places than it has. */
  void compare(Map<String, String> known) {
    object
        .object()
        .object("words")
        .ifPresent(own -> words.forEach((id, text) -> compare(own, id, text, known)));
  }

  private void compare(Node.Obj own, String id, String text, Map<String, String> known) {
    Fields texts = Fields.of(own, object.faults());
    Set<String> places = places(known.getOrDefault(id, ""));
    if (!known.containsKey(id)) {
      Message wanted = say("words.known-id", "an id of {0}", name(Words.CATALOGUE));
      object.faults().add(Fault.broken("unknown key", texts.place(id), Message.of(id), wanted));
    } else if (!places(text).equals(places)) {
      texts.fault(
          id,
          say("words.other-places", "other places"),
          say("words.places", "the places {0}", String.join(" ", places)));
    }
  }

  private static Set<String> places(String text) {
    return Message.PLACE
        .matcher(text)
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}

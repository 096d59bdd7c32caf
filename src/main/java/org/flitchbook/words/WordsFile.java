package org.flitchbook.words;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.json.Checked;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Key;
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

  static Optional<WordsFile> read(SourceFile file, List<Fault> faults) {
    return Binder.PLAIN.read(file, WordsFile.class, faults);
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
    Optional<Fields> own = object.optionalObject("words");
    own.ifPresent(texts -> words.forEach((id, text) -> compare(texts, id, text, known)));
  }

  private static void compare(Fields own, String id, String text, Map<String, String> known) {
    if (!known.containsKey(id)) {
      Message wanted = say("words.known-id", "an id of {0}", name(Words.CATALOGUE));
      own.faults().add(Fault.broken("unknown key", own.place(id), Message.of(id), wanted));
    } else if (!places(text).equals(places(known.getOrDefault(id, "")))) {
      String places = String.join(" ", places(known.getOrDefault(id, "")));
      own.fault(
          id,
          say("words.other-places", "other places"),
          say("words.places", "the places {0}", places));
    }
  }

  private static TreeSet<String> places(String text) {
    TreeSet<String> places = new TreeSet<>();
    Message.PLACE.matcher(text).results().map(MatchResult::group).forEach(places::add);
    return places;
  }
}

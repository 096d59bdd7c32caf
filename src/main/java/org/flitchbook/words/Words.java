package org.flitchbook.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;

/**
 * The fixed wording of what is printed, in one language. A wording may have the places {@code {0}},
 * {@code {1}} … for what is put in, in any order and as often as the language needs it.
 *
 * @param language a BCP 47 tag such as {@code es}
 * @param texts by key
 * @param names what the limits, options and exemptions of the rule sets are called, by the names
 *     that the rule sets give them; those that are missing are called so
 */
public record Words(String language, Map<String, String> texts, Map<String, String> names)
    implements Language {

  /** The language where a plan states none. */
  public static final String DEFAULT = "en";

  static final Pattern PLACE = Pattern.compile("\\{(\\d)}");

  private static final Pattern TAG = Pattern.compile("[A-Za-z]{2,3}(-[A-Za-z0-9]{1,8})*");

  public Words {
    if (!isTag(language)) {
      throw new IllegalArgumentException("\"" + language + "\" is no tag of a language");
    }
    texts = Map.copyOf(texts);
    names = Map.copyOf(names);
  }

  static boolean isTag(String language) {
    return TAG.matcher(language).matches();
  }

  /** Reads the wording of one language; what is wrong with the file goes to the faults. */
  public static Optional<Words> read(SourceFile file, List<Fault> faults) {
    return WordsReader.read(file, faults);
  }

  /** The languages of which there is a file among the templates, in the order of the alphabet. */
  public static List<String> languages(List<SourceFile> templates) {
    return new Shelf(templates, List.of()).languages();
  }

  /**
   * Reads the wording of a language; empty with a fault where its file can't be read.
   *
   * @param templates the files that a user may edit
   * @param own the names of those that are the book's own; its own wording must have the keys and
   *     the places of the tool's other language, and no others
   */
  public static Optional<Words> choose(
      String language, List<SourceFile> templates, List<String> own, List<Fault> faults) {
    return new Shelf(templates, own).words(language, faults);
  }

  /**
   * The wording of a key, with the values put into its places.
   *
   * @throws IllegalArgumentException where there is no such key, or no value for a place: both are
   *     errors of the program, since a book's own files are compared when they are read
   */
  public String say(String id, String english, Object... values) {
    Object[] shown = Stream.of(values).map(Words::argument).toArray();
    return Message.say(id, english, shown).in(this);
  }

  private static Object argument(Object value) {
    return value instanceof Argument ? value : String.valueOf(value);
  }

  @Override
  public String text(String id, String english) {
    return texts.getOrDefault(id, english);
  }

  /**
   * The wording of a number of things: {@code key.one} for 1, else {@code key.many}; the number is
   * its place 0.
   */
  public String count(String id, long number, String one, String many, Object... more) {
    List<Object> values = new ArrayList<>(List.of(number));
    values.addAll(List.of(more));
    boolean single = number == 1;
    return say(id + (single ? ".one" : ".many"), single ? one : many, values.toArray());
  }

  /**
   * How a word of a closed set is shown: {@code what.green-weight} for "green weight" of the family
   * "what". A word that a book's own templates add to the set has no wording and is shown as it is.
   * The words of the family "name" are what the rule sets call their limits, options and
   * exemptions.
   */
  @Override
  public String word(String family, String word) {
    return family.equals("name")
        ? names.getOrDefault(word, word)
        : texts.getOrDefault(key(family, word), word);
  }

  /** The key of a word of a closed set. */
  static String key(String family, String word) {
    String letters = word.replaceAll("[^\\p{L}\\p{N}]+", "-");
    return family + "." + letters.replaceAll("^-|-$", "").toLowerCase(Locale.ROOT);
  }

  /** {@code a, b or c}. */
  public String either(List<String> choices) {
    if (choices.size() < 2) {
      return String.join("", choices);
    }
    int last = choices.size() - 1;
    return say(
        "words.or", "{0} or {1}", String.join(", ", choices.subList(0, last)), choices.get(last));
  }
}

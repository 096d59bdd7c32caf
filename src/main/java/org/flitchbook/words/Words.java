package org.flitchbook.words;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.input.Fault;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Binder;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Language;
import org.flitchbook.message.Listing;
import org.flitchbook.message.Message;

/**
 * The texts of one language. What is not among them is said in the English that stands beside it in
 * the code.
 *
 * @param language a BCP 47 tag such as {@code es}
 * @param texts by id
 * @param names what the limits, options and exemptions of the rule sets are called, by the names
 *     that the rule sets give them; those that are missing are called so
 */
public record Words(String language, Map<String, String> texts, Map<String, String> names)
    implements Language {

  /** The language where a plan states none. */
  public static final String DEFAULT = "en";

  /** The language of the tool whose file has every id. */
  static final String CATALOGUE = "es";

  private static final List<String> TOOLS = List.of(DEFAULT, CATALOGUE);

  private static final Pattern TAG = Pattern.compile("[A-Za-z]{2,3}(-[A-Za-z0-9]{1,8})*");

  /** English as it stands in the code. */
  public static final Words ENGLISH = new Words(DEFAULT, Map.of(), Map.of());

  /**
   * A language, and what is wrong with the book's file of it.
   *
   * @param words without that file's texts where there is a fault
   */
  public record Chosen(Words words, List<Fault> faults) {}

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

  /** The tool's languages and those of a book's own templates, in the order of the alphabet. */
  public static List<String> languages(List<SourceFile> own) {
    Stream<String> ofBook = own.stream().flatMap(each -> WordsFile.language(each.name()).stream());
    return Stream.concat(TOOLS.stream(), ofBook).distinct().sorted().toList();
  }

  /**
   * A language of the tool, with the texts of a book laid over its own. One that only the book has,
   * or nobody, falls back to English text by text.
   *
   * @param own the book's own templates; its texts may be any of those that the tool has, with the
   *     same places
   */
  public static Chosen of(String language, List<SourceFile> own) {
    Words tool = TOOLS.contains(language) ? ofTheTool(language) : ENGLISH.called(language);
    return own.stream()
        .filter(file -> file.name().equals(WordsFile.name(language)))
        .findFirst()
        .map(file -> tool.under(WordsFile.read(file)))
        .orElse(new Chosen(tool, List.of()));
  }

  private static Words ofTheTool(String language) {
    String name = WordsFile.name(language);
    try (InputStream file = Words.class.getResourceAsStream("/" + name)) {
      return file == null
          ? ENGLISH.called(language)
          : WordsFile.read(SourceFile.of(name, file.readAllBytes()))
              .value()
              .map(ENGLISH.called(language)::with)
              .orElseThrow();
    } catch (IOException broken) {
      throw new UncheckedIOException("the tool's own words can't be read", broken);
    }
  }

  private Chosen under(Binder.Bound<WordsFile> own) {
    own.value().ifPresent(file -> file.compare(ofTheTool(CATALOGUE).texts));
    Words chosen = own.faults().isEmpty() ? with(own.value().orElseThrow()) : this;
    return new Chosen(chosen, List.copyOf(own.faults()));
  }

  private Words called(String tag) {
    return isTag(tag) ? new Words(tag, texts, names) : this;
  }

  private Words with(WordsFile file) {
    Map<String, String> all = new HashMap<>(texts);
    all.putAll(file.words());
    Map<String, String> called = new HashMap<>(names);
    called.putAll(file.names());
    return new Words(language, all, called);
  }

  /** A text with the values put into its places. */
  public String say(String id, String english, Object... values) {
    return Message.say(id, english, shown(values)).in(this);
  }

  private static Object[] shown(Object... values) {
    return Stream.of(values)
        .map(value -> value instanceof Argument ? value : String.valueOf(value))
        .toArray();
  }

  @Override
  public String text(String id, String english) {
    return texts.getOrDefault(id, english);
  }

  /** The text of a number of things, see {@link Message#count}. */
  public String count(String id, long number, String one, String many, Object... more) {
    return Message.count(id, number, one, many, shown(more)).in(this);
  }

  /**
   * How a word of a closed set is shown: {@code what.green-weight} for "green weight" of the family
   * "what". A word without a text is shown as it is, as all are in English. The words of the family
   * "name" are what the rule sets call their limits, options and exemptions.
   */
  @Override
  public String word(String family, String word) {
    return family.equals("name")
        ? names.getOrDefault(word, word)
        : texts.getOrDefault(key(family, word), word);
  }

  /** The id of a word of a closed set. */
  static String key(String family, String word) {
    String letters = word.replaceAll("[^\\p{L}\\p{N}]+", "-");
    return family + "." + letters.replaceAll("^-|-$", "").toLowerCase(Locale.ROOT);
  }

  /** {@code a, b or c}. */
  public String either(List<String> choices) {
    return Listing.or(choices).in(this);
  }
}

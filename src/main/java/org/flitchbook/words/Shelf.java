package org.flitchbook.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.stream.Collectors;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;

/**
 * The files of all languages.
 *
 * @param own the names of the book's own files
 */
record Shelf(List<SourceFile> templates, List<String> own) {

  private static final String FOLDER = "templates/words/";

  private List<SourceFile> files() {
    return templates.stream()
        .filter(file -> file.name().startsWith(FOLDER) && file.name().endsWith(".json"))
        .toList();
  }

  List<String> languages() {
    return files().stream().map(WordsReader::language).sorted().toList();
  }

  Optional<Words> words(String language, List<Fault> faults) {
    String name = FOLDER + language + ".json";
    Optional<SourceFile> file =
        files().stream().filter(each -> each.name().equals(name)).findFirst();
    if (file.isEmpty()) {
      String there = "one of " + String.join(", ", languages());
      faults.add(Fault.broken("missing file", Place.of(name), "no such file", there));
    }
    return file.flatMap(found -> Words.read(found, faults))
        .filter(words -> !own.contains(name) || isWhole(words, Place.of(name), faults));
  }

  /** Compares a book's own wording with another one, so that no key is missing when it is asked. */
  private boolean isWhole(Words words, Place place, List<Fault> faults) {
    Optional<Words> other =
        files().stream()
            .filter(file -> !WordsReader.language(file).equals(words.language()))
            .flatMap(file -> Words.read(file, new ArrayList<>()).stream())
            .findFirst();
    int before = faults.size();
    other.ifPresent(whole -> compare(words, whole, place, faults));
    return faults.size() == before;
  }

  private static void compare(Words words, Words whole, Place place, List<Fault> faults) {
    for (String key : new TreeSet<>(whole.texts().keySet())) {
      if (!words.texts().containsKey(key)) {
        String wanted = "a wording of it, such as \"" + whole.texts().get(key) + "\"";
        faults.add(Fault.broken("missing key", place, "no \"" + key + "\"", wanted));
      }
    }
    for (String key : new TreeSet<>(words.texts().keySet())) {
      String known = whole.texts().get(key);
      if (known == null) {
        faults.add(
            Fault.broken("unknown key", place, "\"" + key + "\"", "a key of " + whole.language()));
      } else if (!places(known).equals(places(words.texts().getOrDefault(key, "")))) {
        String wanted = "the places " + String.join(" ", places(known));
        faults.add(
            Fault.broken("wrong value", place.column("words." + key), "other places", wanted));
      }
    }
  }

  private static Set<String> places(String text) {
    return Words.PLACE
        .matcher(text)
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }
}

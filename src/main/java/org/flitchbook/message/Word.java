package org.flitchbook.message;

/**
 * A word of a closed set, such as a step or a verdict.
 *
 * @param family the set, by which a language finds it
 */
public record Word(String family, String word) implements Argument {

  @Override
  public String in(Language language) {
    return language.word(family, word);
  }

  @Override
  public Object json() {
    return word;
  }
}

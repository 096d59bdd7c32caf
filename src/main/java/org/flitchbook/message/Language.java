package org.flitchbook.message;

/** Puts messages and the words of closed sets into a language. */
public interface Language {

  /** The language of the texts in the code. */
  Language ENGLISH =
      new Language() {
        @Override
        public String text(String id, String english) {
          return english;
        }

        @Override
        public String word(String family, String word) {
          return word;
        }
      };

  /**
   * The text of a message, with places such as {@code {0}} for its arguments.
   *
   * @param english what stands beside the id in the code
   */
  String text(String id, String english);

  /** How a word of a closed set is shown: "green weight" of the family "what". */
  String word(String family, String word);
}

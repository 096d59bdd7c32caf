package org.flitchbook.document;

import java.util.Objects;

/**
 * The answer in one look: a symbol, a few big words, one sentence.
 *
 * @param tone chooses the symbol
 * @param words not blank
 * @param sentence not blank
 */
public record Banner(Tone tone, String words, String sentence) implements Block {
  public Banner {
    Objects.requireNonNull(tone, "banner tone");
    Demand.words("banner words", words);
    Demand.words("banner sentence", sentence);
  }
}

package org.flitchbook.document;

import java.util.List;

/** One piece of a document's content. */
public sealed interface Block
    permits Block.Heading,
        Block.Paragraph,
        Block.Note,
        Block.Caution,
        Block.Banner,
        Block.Blank,
        Block.PageBreak,
        Facts,
        Table,
        Sum,
        Chart,
        Signatures {

  /**
   * A heading, never last on a page.
   *
   * @param level 1 (a part of the document) to 3
   * @param text not blank
   */
  record Heading(int level, String text) implements Block {
    public Heading {
      Require.between("heading level", level, 1, 3);
      Require.notBlank("heading", text);
    }
  }

  /** Running text. */
  record Paragraph(Text text) implements Block {}

  /** Small print, such as the sources under a table; not blank. */
  record Note(Text text) implements Block {
    public Note {
      Require.notBlank("note", text.plain());
    }
  }

  /** A short warning in a small frame; not blank. */
  record Caution(String text) implements Block {
    public Caution {
      Require.notBlank("caution", text);
    }
  }

  /**
   * The answer in one look: a symbol, a few big words, one sentence.
   *
   * @param tone chooses the symbol
   * @param words not blank
   * @param sentence not blank
   */
  record Banner(Tone tone, String words, String sentence) implements Block {
    public Banner {
      Require.notBlank("banner words", words);
      Require.notBlank("banner sentence", sentence);
    }
  }

  /**
   * Ruled room to write in by hand.
   *
   * @param label what is to be written; not blank
   * @param lines across the page, 1 to 12
   * @param slots what is to be written beside each other on one more line, such as a date; may be
   *     empty
   */
  record Blank(String label, int lines, List<String> slots) implements Block {
    public Blank {
      Require.notBlank("label of a blank", label);
      Require.between("lines of a blank", lines, 1, 12);
      slots = List.copyOf(slots);
      slots.forEach(slot -> Require.notBlank("slot of a blank", slot));
    }
  }

  /** What follows begins a new page. */
  record PageBreak() implements Block {}
}

package org.flitchbook.document;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** One piece of a document's content. */
public sealed interface Block
    permits Block.Heading,
        Block.Paragraph,
        Block.Note,
        Block.Caution,
        Block.Banner,
        Block.Blank,
        Block.PageBreak,
        Block.Facts,
        Table,
        Block.Sum,
        Chart,
        Block.Signatures {

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

  /**
   * A grid of labels with their values, filled row by row.
   *
   * @param columns facts beside each other, 1 to 3
   * @param facts not empty
   */
  record Facts(int columns, List<Fact> facts) implements Block {
    public Facts {
      Require.between("columns of facts", columns, 1, 3);
      facts = List.copyOf(facts);
      Require.notEmpty("facts", facts);
    }

    /** A label, not blank, with its value. */
    public record Fact(String label, Text value) {
      public Fact {
        Require.notBlank("label of a fact", label);
      }
    }
  }

  /** A worked calculation, line by line, with the equal signs under each other; not empty. */
  record Sum(List<Line> lines) implements Block {
    public Sum {
      lines = List.copyOf(lines);
      Require.notEmpty("lines of a sum", lines);
    }

    /**
     * One line of a sum.
     *
     * @param label what is worked out; not blank
     * @param expression the formula with its numbers put in; empty where the result was measured
     * @param result value and unit; not blank
     */
    public record Line(String label, String expression, String result) {
      public Line {
        Require.notBlank("label of a sum", label);
        Require.notBlank("result of a sum", result);
      }
    }
  }

  /** Boxes to sign in, never split from each other; not empty, each field once. */
  record Signatures(List<Box> boxes) implements Block {
    public Signatures {
      boxes = List.copyOf(boxes);
      Require.notEmpty("signature boxes", boxes);
      Set<String> fields = new HashSet<>();
      for (Box box : boxes) {
        if (!fields.add(box.field())) {
          throw new IllegalArgumentException("signature field stands twice: " + box.field());
        }
      }
    }

    /**
     * A box with lines for signature, printed name, date and time.
     *
     * @param field name of the signature field in the file; not blank, without a full stop
     * @param role who signs, such as "Prepared by"; not blank
     * @param name printed on the name's line; may be empty
     * @param statement what the signer states; may be empty
     */
    public record Box(String field, String role, String name, String statement) {
      public Box {
        Require.notBlank("signature field", field);
        if (field.indexOf('.') >= 0) {
          throw new IllegalArgumentException("signature field has a full stop: " + field);
        }
        Require.notBlank("role of a signature", role);
      }
    }
  }
}

package org.flitchbook.document;

/** Where a reader is led who follows a piece of text. On paper it changes nothing. */
public sealed interface Target {

  /** The target's name, for a reader who can't see where the link stands. */
  String words();

  /**
   * A section of the same document.
   *
   * @param heading the text of its heading; the first one where several agree, and where there is
   *     none, the text leads nowhere
   */
  record Section(String heading) implements Target {
    public Section {
      Demand.words("heading of a section", heading);
    }

    @Override
    public String words() {
      return heading;
    }
  }

  /**
   * A file beside the printed one.
   *
   * @param name without a folder
   */
  record File(String name) implements Target {
    public File {
      Demand.words("name of a file", name);
      if (name.contains("/") || name.contains("\\")) {
        throw new IllegalArgumentException("a file in another folder: " + name);
      }
    }

    @Override
    public String words() {
      return name;
    }
  }
}

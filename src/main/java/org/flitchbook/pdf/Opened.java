package org.flitchbook.pdf;

import java.util.List;

/** What came of looking for attachments in a file that anybody may have made. */
public sealed interface Opened {

  /** All that the file carries, by name; none for a file without attachments. */
  record Carrying(List<Attachment> attachments) implements Opened {
    public Carrying {
      attachments = List.copyOf(attachments);
    }
  }

  /**
   * The file can't be trusted to give its attachments back as they were put in.
   *
   * @param found in words
   * @param expected what would have done
   */
  record Refused(String found, String expected) implements Opened {}
}

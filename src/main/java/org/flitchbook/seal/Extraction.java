package org.flitchbook.seal;

import java.util.List;
import org.flitchbook.message.Message;
import org.flitchbook.pdf.Attachment;

/** What came of looking for attachments in a file that anybody may have made. */
public sealed interface Extraction {

  /** All that the file carries, by name; none for a file without attachments. */
  record Attachments(List<Attachment> attachments) implements Extraction {
    public Attachments {
      attachments = List.copyOf(attachments);
    }
  }

  /**
   * The file can't be trusted to give its attachments back as they were put in.
   *
   * @param expected what would have done
   */
  record Refused(Message found, Message expected) implements Extraction {}
}

package org.flitchbook.check;

import java.util.List;
import java.util.stream.Collectors;
import org.flitchbook.message.Message;

/** What findings say, in English. */
public final class Said {

  private Said() {}

  public static String reasons(Finding finding) {
    return english(finding.reasons());
  }

  static String reasons(Part part) {
    return english(part.reasons());
  }

  static String remarks(Finding finding) {
    return english(finding.remarks());
  }

  public static String formulas(Finding finding) {
    return english(finding.formulas());
  }

  private static String english(List<Message> messages) {
    return messages.stream().map(Message::toString).collect(Collectors.joining("; "));
  }
}

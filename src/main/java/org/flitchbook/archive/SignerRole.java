package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfSignatures;

/** What somebody signs as. The first box of a record is its maker's, the others are reviewers'. */
public enum SignerRole {
  MAKER,
  REVIEWER;

  /** As the plan has it among a person's roles. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** As people read it. */
  public Message message() {
    return this == MAKER ? say("archive.maker", "maker") : say("archive.reviewer", "reviewer");
  }

  public static SignerRole of(String field, PdfSignatures look) {
    return look.fields().indexOf(field) == 0 ? MAKER : REVIEWER;
  }

  /** The first box that is still open to the role. */
  public Optional<String> box(PdfSignatures look) {
    List<String> fields = look.fields();
    List<String> own =
        this == MAKER
            ? fields.subList(0, Math.min(1, fields.size()))
            : fields.stream().skip(1).toList();
    return own.stream().filter(field -> look.signature(field).isEmpty()).findFirst();
  }
}

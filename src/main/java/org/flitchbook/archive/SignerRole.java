package org.flitchbook.archive;

import static org.flitchbook.message.Message.say;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.flitchbook.job.UsageException;
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

  /**
   * The role of a word that a person typed.
   *
   * @throws UsageException where it is none
   */
  public static SignerRole named(String word) {
    return Stream.of(values())
        .filter(each -> each.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new UsageException(
                    "archive.no-role", "\"{0}\" is neither maker nor reviewer", word));
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

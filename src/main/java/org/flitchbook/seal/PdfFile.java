package org.flitchbook.seal;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSNull;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.flitchbook.message.Message;
import org.flitchbook.pdf.Attachment;
import org.flitchbook.words.Words;

/** Signs PDF files, and reads those that anybody may have made. */
public final class PdfFile {
  private PdfFile() {}

  /**
   * Signs a print: fills a field in an increment and keeps every byte before it.
   *
   * @param seal makes the signature of the bytes given, no longer than the room for it
   * @throws IllegalArgumentException where the print has no such field, or it is signed already
   */
  public static byte[] sign(byte[] pdf, SignatureRequest request, UnaryOperator<byte[]> seal) {
    try {
      return new SignatureWriter(request).sign(pdf, seal);
    } catch (IOException unreadable) {
      throw new UncheckedIOException("this can't be signed", unreadable);
    }
  }

  /**
   * The fields and signatures of a file; empty where it can't be read as PDF. Whether a signature
   * is true is not looked at.
   */
  public static Optional<PdfSignatures> signatures(byte[] pdf) {
    try {
      return Optional.of(new SignatureReader(pdf).read());
    } catch (IOException broken) {
      return Optional.empty();
    }
  }

  /**
   * What was changed in a file after it was printed beyond the signing of its fields.
   *
   * @param signatures of that very file
   */
  public static List<Message> changes(byte[] pdf, PdfSignatures signatures) {
    try {
      return new Revisions(pdf, signatures).changes();
    } catch (IOException broken) {
      return List.of(say("seal.change.unreadable", "an earlier state of it can't be read"));
    }
  }

  /** How a file's first bytes, as it was printed, stand to a print made again. */
  public sealed interface Likeness {

    /** Byte for byte the same, but for how the streams are packed. */
    record Same() implements Likeness {}

    /** The parts that are not alike; one of them at least. */
    record Different(List<Message> parts) implements Likeness {
      public Different {
        parts = List.copyOf(parts);
      }
    }
  }

  /**
   * Compares a file as it was printed, before anybody signed it, with a print made again: pages,
   * structure, attachments and everything else that can be come upon in it.
   *
   * @param signatures of that very file
   */
  public static Likeness likeness(byte[] pdf, PdfSignatures signatures, byte[] again) {
    byte[] printed = Arrays.copyOf(pdf, signatures.printed());
    if (Arrays.equals(printed, again) || Repacking.isAll(printed, again)) {
      return new Likeness.Same();
    }
    try (PDDocument one = load(printed);
        PDDocument other = load(again)) {
      return new Likeness.Different(
          ContentHash.of(one, Map.of()).equals(ContentHash.of(other, Map.of()))
              ? List.of(say("seal.part.bytes", "the way in which it was saved"))
              : Parts.different(one, other));
    } catch (IOException broken) {
      return new Likeness.Different(
          List.of(say("seal.part.whole", "the file, which can't be read as it was printed")));
    }
  }

  /**
   * The files that a file carries. They are refused where it is no PDF file, where it is encrypted,
   * where an attachment is packed otherwise than a print packs it, is larger than 64 MB unpacked,
   * makes more than 512 MB with the others or has not the size that it states, and where two have
   * one name. Whether the file was changed is not looked at.
   */
  public static Extraction attachments(byte[] pdf) {
    try (PDDocument file = load(pdf)) {
      return new Extraction.Attachments(List.copyOf(new AttachmentReader().read(file).values()));
    } catch (AttachmentReader.Refusal refusal) {
      return refusal.refused;
    } catch (Encrypted encrypted) {
      return new Extraction.Refused(
          say("seal.encrypted.found", "an encrypted file"),
          say("seal.encrypted.expected", "a file that anybody can read"));
    } catch (IOException unreadable) {
      return new Extraction.Refused(
          say(
              "seal.no-pdf.found",
              "what can't be read as PDF ({0})",
              String.valueOf(unreadable.getMessage())),
          say("seal.no-pdf.expected", "a whole PDF file"));
    }
  }

  /** The words on the pages of a file, without any white space; empty where it can't be read. */
  public static Optional<String> words(byte[] pdf) {
    try (PDDocument file = load(pdf)) {
      String text = call(() -> new BoundedText().getText(file));
      return Optional.of(text.replaceAll("\\s+", ""));
    } catch (IOException broken) {
      return Optional.empty();
    }
  }

  /**
   * A call of PDFBox's own code, and of nothing else, on a file that anybody may have made. PDFBox
   * reports what is broken in one by exceptions of many kinds. They become an {@link IOException}
   * at the call itself, so that no error of this program is taken for one of the file.
   */
  interface Call<T> {
    T run() throws IOException;
  }

  static <T> T call(Call<T> call) throws IOException {
    try {
      return call.run();
    } catch (RuntimeException | StackOverflowError broken) {
      throw new IOException(broken.toString(), broken);
    }
  }

  /**
   * Loads a file with all its objects. PDFBox would parse each when it is first asked for, and take
   * one that it can't find for {@code null}; in a record each object that is listed is there. What
   * would fill the memory is refused, see {@link BoundedParser}.
   */
  static PDDocument load(byte[] pdf) throws IOException {
    BoundedParser parser = call(() -> new BoundedParser(pdf));
    PDDocument file = call(parser::parse);
    try {
      if (file.isEncrypted()) {
        throw new Encrypted();
      }
      COSDocument objects = file.getDocument();
      for (COSObjectKey key : List.copyOf(objects.getXrefTable().keySet())) {
        COSBase object = call(() -> objects.getObjectFromPool(key).getObject());
        parser.throwRefusal();
        if (object == null || object instanceof COSNull) {
          throw new IOException("object " + key + " is missing");
        }
      }
      call(
          () -> {
            parser.requirePages(file);
            return file;
          });
      return file;
    } catch (IOException broken) {
      file.close();
      throw broken;
    }
  }

  /** What is unpacked of such a file could not be counted before. */
  private static final class Encrypted extends IOException {
    private static final long serialVersionUID = 1L;
  }

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

  /**
   * What a signature is to show and state.
   *
   * @param field the field to sign in
   * @param lines shown in the field, the first one strong; long ones are broken
   * @param words the wording of the print's language
   * @param name of the signer
   * @param reason for signing
   * @param time stated as the time of signing, with its offset
   * @param certifies whether it is the first one, after which only fields may be filled and signed
   * @param room for the seal, in bytes
   */
  public record SignatureRequest(
      String field,
      List<String> lines,
      Words words,
      String name,
      String reason,
      ZonedDateTime time,
      boolean certifies,
      int room) {
    public SignatureRequest {
      lines = List.copyOf(lines);
      if (lines.isEmpty() || room <= 0) {
        throw new IllegalArgumentException("a signature shows something and has room for its seal");
      }
    }
  }
}

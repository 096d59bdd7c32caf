package org.flitchbook.disk;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import org.flitchbook.message.Message;

/** Reads a file that anybody may have put there, and nothing that only looks like one. */
final class PlainFile {

  /** More than any record or ledger has. */
  private static final int LARGEST_MB = 512;

  private static final int LARGEST = LARGEST_MB << 20;

  private PlainFile() {}

  /** Why this program does not read or write what is there. */
  static final class Refusal extends IOException {
    private static final long serialVersionUID = 1L;
    final transient Message why;

    Refusal(Message why) {
      super(why.toString());
      this.why = why;
    }
  }

  static void require(Path file) throws IOException {
    BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
    if (found.isDirectory()) {
      throw new Refusal(say("disk.folder", "a folder, not a file"));
    }
    if (!found.isRegularFile()) {
      throw new Refusal(say("disk.no-file", "a pipe or a device; put a plain file in its place"));
    }
  }

  static Refusal leadsOut() {
    return new Refusal(
        say("disk.leads-out", "a link that leads out of the book; put a copy in its place"));
  }

  /** It may grow while it is read. */
  static byte[] bytes(Path file) throws IOException {
    require(file);
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = Files.size(file) > LARGEST ? new byte[0] : in.readNBytes(LARGEST);
      if (Files.size(file) > LARGEST) {
        throw new Refusal(
            say("disk.large", "a file of more than {0} MB, which no record has", LARGEST_MB));
      }
      return bytes;
    }
  }
}

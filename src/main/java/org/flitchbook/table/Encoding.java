package org.flitchbook.table;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.input.SourceFile;

/**
 * In what encoding a file seems to be.
 *
 * @param marked whether a byte order mark says so
 * @param faults why it is no text in any encoding that is known; else none
 */
public record Encoding(Charset charset, boolean marked, List<Fault> faults) {

  public Encoding {
    faults = List.copyOf(faults);
  }

  /** By its mark, else UTF-8 or UTF-16 where the bytes are that, else Windows-1252. */
  static Encoding of(SourceFile file) {
    Text text = Text.of(file, Optional.empty());
    List<Fault> broken = text.faults().stream().filter(each -> each.is(Severity.BROKEN)).toList();
    if (broken.stream().anyMatch(fault -> fault.rule().equals("NUL byte"))) {
      for (Charset wide : List.of(UTF_16LE, UTF_16BE)) {
        if (isText(Text.of(file, Optional.of(wide)))) {
          return new Encoding(wide, false, List.of());
        }
      }
    }
    return new Encoding(text.charset(), text.marked(), broken);
  }

  /** Bytes by twos are letters of some kind nearly always; those of a text have lines, too. */
  private static boolean isText(Text text) {
    return text.faults().isEmpty() && text.begins().indexOf('\n') >= 0;
  }

  /** As {@code logs.json} calls it. */
  public String name() {
    return charset.name().toLowerCase(Locale.ROOT);
  }
}

package org.flitchbook.desk;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Place;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.json.Parsed;
import org.flitchbook.message.Message;
import org.flitchbook.record.DayJudged;
import org.flitchbook.seal.Extraction;
import org.flitchbook.seal.PdfFile;

/**
 * What a record carries, taken out of it: from this alone its lots are judged again.
 *
 * @param name of the record, such as {@code 26047-B1}
 * @param found what was found, as the record has it
 */
record Enclosed(String name, List<SourceFile> sources, SourceFile findings, Node.Obj found) {

  /** The key under which the findings name the version of the program that made them. */
  static final String TOOL = "tool";

  /** What a record carries, or why it can't be had. */
  record Taken(Optional<Enclosed> enclosed, List<Fault> faults) {}

  static Taken of(String file, byte[] pdf) {
    Extraction opened = PdfFile.attachments(pdf);
    if (opened instanceof Extraction.Refused refused) {
      return faulty(file, refused.found(), refused.expected());
    }
    List<SourceFile> sources =
        new ArrayList<>(Evidence.files(((Extraction.Attachments) opened).attachments()));
    List<SourceFile> findings =
        sources.stream().filter(each -> each.name().startsWith(Evidence.FINDINGS)).toList();
    if (findings.size() != 1) {
      return faulty(
          file,
          Message.of(findings.size() + " files of findings"),
          Message.of("a record with its findings"));
    }
    sources.removeAll(findings);
    return parsed(sources, findings.get(0));
  }

  private static Taken parsed(List<SourceFile> sources, SourceFile findings) {
    Parsed parsed = Json.read(findings.name(), findings.bytes());
    String name = findings.name().substring(Evidence.FINDINGS.length()).replaceAll("\\.json$", "");
    return new Taken(
        parsed.object().map(found -> new Enclosed(name, List.copyOf(sources), findings, found)),
        parsed.faults());
  }

  private static Taken faulty(String file, Message found, Message expected) {
    return new Taken(
        Optional.empty(), List.of(Fault.broken("evidence", Place.of(file), found, expected)));
  }

  String text(String key) {
    return found.members().get(key) instanceof Node.Text text ? text.value() : "";
  }

  /** The day that it is a record of. */
  Optional<LocalDate> day() {
    try {
      return Optional.of(LocalDate.parse(text("day")));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** The codes of the lots that it is about. */
  List<String> lots() {
    List<String> lots = new ArrayList<>();
    if (found.members().get("lots") instanceof Node.Items items) {
      for (Node each : items.items()) {
        if (each instanceof Node.Obj lot && lot.members().get("lot") instanceof Node.Text code) {
          lots.add(code.value());
        }
      }
    }
    return lots;
  }

  Book book() {
    return Evidence.book(text("book"), sources);
  }

  /** Judges the day again as of the moment that the record states; faults are added. */
  Optional<DayJudged> judgedAgain(List<Fault> faults) {
    Judging judging = new Judging(book(), List.of());
    try {
      Optional<DayJudged> again =
          day().flatMap(date -> judging.judge(date, Optional.of(text("judgedAt")), false));
      faults.addAll(again.isPresent() ? List.of() : judging.faults());
      return again;
    } catch (Misuse noMoment) {
      faults.add(
          Fault.broken(
              "evidence",
              Place.of(findings.name()).column("judgedAt"),
              "\"" + text("judgedAt") + "\"",
              "the moment judged"));
      return Optional.empty();
    }
  }
}

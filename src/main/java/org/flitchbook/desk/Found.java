package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Json;
import org.flitchbook.ledger.Deed;
import org.flitchbook.ledger.Event;

/**
 * A finished revision on the disk of which the ledger has no line.
 *
 * @param files its files, by their names in its folder
 * @param bundle the one among them, which agrees with its manifest
 * @param moment the moment judged
 */
record Found(
    LocalDate day,
    int number,
    SortedMap<String, SourceFile> files,
    BundleRead bundle,
    Instant moment) {

  /** Reads a revision; empty where its files are not those of its bundle. */
  static Optional<Found> read(Path folder, LocalDate day, int number) throws IOException {
    SortedMap<String, SourceFile> files = files(folder);
    SourceFile zip = files.get(Printing.BUNDLE);
    Optional<BundleRead> bundle =
        zip == null ? Optional.empty() : BundleRead.of(zip.bytes()).filter(b -> agrees(b, files));
    Optional<Instant> moment = json(files).flatMap(Found::moment);
    return bundle.isPresent() && moment.isPresent()
        ? Optional.of(new Found(day, number, files, bundle.get(), moment.get()))
        : Optional.empty();
  }

  /** What is no plain file counts as one without a byte, so that nothing is overlooked. */
  private static SortedMap<String, SourceFile> files(Path folder) throws IOException {
    SortedMap<String, SourceFile> files = new TreeMap<>();
    try (Stream<Path> entries = Files.list(folder)) {
      for (Path each : entries.toList()) {
        String name = String.valueOf(each.getFileName());
        byte[] bytes = Files.isRegularFile(each) ? Files.readAllBytes(each) : new byte[0];
        files.put(name, SourceFile.of(name, bytes));
      }
    }
    return files;
  }

  private static boolean agrees(BundleRead bundle, SortedMap<String, SourceFile> files) {
    SortedMap<String, SourceFile> others = new TreeMap<>(files);
    others.remove(Printing.BUNDLE);
    return others.equals(bundle.records());
  }

  private static Optional<Fields> json(SortedMap<String, SourceFile> files) {
    SourceFile file = files.get(Printing.DAY);
    return file == null
        ? Optional.empty()
        : Json.read(file.name(), file.bytes())
            .object()
            .map(object -> Fields.of(object, new ArrayList<>()));
  }

  private static Optional<Instant> moment(Fields json) {
    try {
      return json.optionalText("judgedAt")
          .map(OffsetDateTime::parse)
          .map(OffsetDateTime::toInstant);
    } catch (DateTimeException noTime) {
      return Optional.empty();
    }
  }

  /** The line that it should have had. */
  Event event(Deed deed, Instant now, String tool) {
    Optional<Fields> filing = json(files).flatMap(json -> json.optionalObject("filing"));
    return Event.of(deed, now, tool)
        .on(day, number)
        .by(text(filing, "by"), text(filing, "reason"))
        .files(BundleRead.hashes(bundle.evidence()), written(day, number, files.values()))
        .facts(
            Map.of(
                Told.JUDGED_AT,
                moment.toString(),
                "found",
                "complete on the disk, without its line; its files agree with its own manifest"));
  }

  private static String text(Optional<Fields> filing, String key) {
    return filing.flatMap(fields -> fields.optionalText(key)).orElse("");
  }

  /** The SHA-256 of each record of a revision, by its path in the book. */
  static SortedMap<String, String> written(
      LocalDate day, int number, Iterable<SourceFile> records) {
    SortedMap<String, String> written = new TreeMap<>();
    records.forEach(
        file -> written.put(Told.folder(day, number) + "/" + file.name(), file.sha256()));
    return written;
  }
}

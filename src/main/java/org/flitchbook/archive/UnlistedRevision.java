package org.flitchbook.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.flitchbook.disk.Disk;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Json;
import org.flitchbook.json.Node;
import org.flitchbook.ledger.Event;

/**
 * A finished revision on the disk of which the ledger has no line.
 *
 * @param files its files, by their names in its folder
 * @param bundle the one among them, which agrees with its manifest
 * @param moment the moment judged
 */
record UnlistedRevision(
    LocalDate day, int number, SortedMap<String, SourceFile> files, Bundle bundle, Instant moment) {

  private static final String DAY = "day.json";

  /** Reads a revision; empty where its files are not those of its bundle. */
  static Optional<UnlistedRevision> read(Path folder, LocalDate day, int number)
      throws IOException {
    SortedMap<String, SourceFile> files = files(folder);
    Optional<Bundle> bundle =
        Optional.ofNullable(files.get(Bundle.FILE))
            .flatMap(zip -> Bundle.read(zip.bytes()))
            .filter(found -> agrees(found, files));
    Optional<Instant> moment = json(files).flatMap(UnlistedRevision::moment);
    return bundle.isPresent() && moment.isPresent()
        ? Optional.of(new UnlistedRevision(day, number, files, bundle.get(), moment.get()))
        : Optional.empty();
  }

  /** What is no plain file counts as one without a byte, so that nothing is overlooked. */
  private static SortedMap<String, SourceFile> files(Path folder) throws IOException {
    SortedMap<String, SourceFile> files = new TreeMap<>();
    for (Path each : Disk.list(folder)) {
      byte[] bytes = Files.isRegularFile(each) ? Files.readAllBytes(each) : new byte[0];
      files.put(Disk.name(each), SourceFile.of(Disk.name(each), bytes));
    }
    return files;
  }

  private static boolean agrees(Bundle bundle, SortedMap<String, SourceFile> files) {
    SortedMap<String, SourceFile> others = new TreeMap<>(files);
    others.remove(Bundle.FILE);
    return others.equals(bundle.records());
  }

  private static Optional<Node.Obj> json(SortedMap<String, SourceFile> files) {
    return Optional.ofNullable(files.get(DAY))
        .flatMap(file -> Json.read(file.name(), file.bytes()).object());
  }

  private static Optional<Instant> moment(Node.Obj json) {
    try {
      return json.text("judgedAt").map(OffsetDateTime::parse).map(OffsetDateTime::toInstant);
    } catch (DateTimeException noTime) {
      return Optional.empty();
    }
  }

  /** The line that it should have had. */
  Event completed(Event event) {
    Optional<Node.Obj> filing = json(files).flatMap(json -> json.object("filing"));
    return event
        .on(day, number)
        .by(text(filing, "by"), text(filing, "reason"))
        .files(
            DayLedger.hashes(bundle.evidence().values()),
            DayLedger.outputs(day, number, files.values()))
        .facts(
            Map.of(
                DayLedger.JUDGED_AT,
                moment.toString(),
                "found",
                "complete on the disk, without its line; its files agree with its own manifest"));
  }

  private static String text(Optional<Node.Obj> filing, String key) {
    return filing.flatMap(members -> members.text(key)).orElse("");
  }
}

package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.flitchbook.input.SourceFile;
import org.flitchbook.message.Message;
import org.flitchbook.seal.PdfFile;
import org.flitchbook.seal.PdfSignatures;

/**
 * Kills closes of one day, and signings of its records, at moments by chance and holds each time:
 * the old state or the new one, every record as the ledger tells it, a chain that holds; and after
 * the next job no trace.
 */
final class Kills {

  private final Path book;
  private final Path keys;
  private final Path passphrase;
  private final Path day;
  private final Path records;
  private final Random chance;
  private final int status;

  /** How long is waited before a moment is looked for again, in ns; a file takes some ms. */
  private static final long TICK = 100_000;

  /** How long a close takes on this machine, in ms. */
  private int whole;

  private final Map<String, Integer> counts = new TreeMap<>();
  private int weight = 4222;

  /**
   * Closes the day of a book by a machine of its own, and sees how long that takes.
   *
   * @param status with which a close of this book ends
   */
  static Kills of(Path book, long seed, int status) throws Exception {
    Kills kills = new Kills(book, seed, status);
    Smokeyard.key("MA", book, kills.keys);
    long began = System.nanoTime();
    Child.start("close", kills.day).ended().expect(status);
    kills.whole = Math.toIntExact(Duration.ofNanos(System.nanoTime() - began).toMillis());
    return kills;
  }

  /** Of a book whose day is closed, in which nothing is killed and only {@link #plant} is used. */
  static Kills ofClosed(Path book, long seed) throws Exception {
    return new Kills(book, seed, 0);
  }

  private Kills(Path book, long seed, int status) throws Exception {
    this.book = book;
    this.keys = book.resolveSibling(book.getFileName() + "-keys");
    this.passphrase = book.resolveSibling(book.getFileName() + "-passphrase");
    this.day = book.resolve(Tree.DAY);
    this.records = book.resolve("records").resolve(Tree.DAY);
    this.chance = new Random(seed);
    this.status = status;
    Files.writeString(passphrase, Smokeyard.PASSPHRASE);
  }

  /** How often what was found. */
  Map<String, Integer> counts() {
    return counts;
  }

  private Object[] signing(Object... words) {
    Object[] key = {"--keys", keys, "--passphrase-file", passphrase, "--yes"};
    return Stream.of(words, key).flatMap(Stream::of).toArray();
  }

  /** Every other time a signing, of a record that the close before it made. */
  void kill(int times) throws Exception {
    for (int i = 0; i < times; i++) {
      if (i % 2 == 0) {
        killClose();
      } else {
        killSigning();
      }
    }
  }

  /** Counts what a deed did that no kill may do. */
  void plant(Tree.Deed deed) throws Exception {
    Map<String, String> before = Tree.hashes(records);
    int lines = Chain.lines(book).size();
    deed.run();
    inspect("planted", before, "", false, lines);
  }

  private void killClose() throws Exception {
    Tree.edit(day.resolve("chill.csv"), "weight,," + weight, "weight,," + (weight + 1));
    weight++;
    Map<String, String> before = Tree.hashes(records);
    int lines = Chain.lines(book).size();
    Child child = Child.start("close", day, "--as", "MA", "--reason", "weight " + weight);
    await(child.process(), records.resolve("r" + (Chain.revision(book) + 1)));
    child.kill();
    boolean moved = Files.exists(records.resolve("r" + (Chain.revision(book) + 1)));
    inspect("close", before, "", moved, lines);
    Ran.of("close", day, "--as", "MA", "--reason", "weight " + weight).expect(status);
    settled(before, lines);
    assertEquals("weight " + weight, Chain.last(book).get("reason").asText());
  }

  private void killSigning() throws Exception {
    List<Path> prints =
        Tree.walk(records.resolve("r" + Chain.revision(book))).stream()
            .filter(file -> file.toString().endsWith(".pdf"))
            .toList();
    Path print = prints.get(chance.nextInt(prints.size()));
    byte[] unsigned = Tree.bytes(print);
    Map<String, String> before = Tree.hashes(records, file -> !file.equals(print));
    int lines = Chain.lines(book).size();
    Child child = Child.start(signing("sign", print, "--as", "MA"));
    await(child.process(), () -> Files.size(print) > unsigned.length);
    child.kill();
    boolean signed = isSigned(print, unsigned);
    inspect("sign", before, Tree.name(book, print), signed, lines);
    Ran.of(signing("sign", print, "--as", "MA")).expect(signed ? 2 : 0);
    assertTrue(isSigned(print, unsigned));
    settled(before, lines);
    assertEquals("signed", Chain.last(book).get("event").asText());
  }

  /** Either as it was or whole with one signature behind it. */
  private boolean isSigned(Path print, byte[] unsigned) {
    byte[] now = Tree.bytes(print);
    if (Arrays.equals(unsigned, now)) {
      return false;
    }
    PdfSignatures look =
        PdfFile.signatures(now)
            .orElse(new PdfSignatures(List.of(), List.of(), 0, List.of(Message.of("unreadable"))));
    boolean whole =
        look.printed() == unsigned.length
            && Arrays.equals(unsigned, Arrays.copyOf(now, unsigned.length))
            && look.signatures().size() == 1
            && look.faults().isEmpty();
    count("half files", whole ? 0 : 1);
    return true;
  }

  /**
   * Waits for the moment of the kill: any time, a number of records written, the revision moved
   * into its place, or the ledger grown; and then a little more.
   */
  private void await(Process process, Path revision) throws Exception {
    int files = chance.nextInt(Tree.names(records.resolve("r1")).size() + 1);
    await(
        process, () -> Files.exists(revision) || written() >= files, () -> Files.exists(revision));
  }

  /** A signing has no files of its own to wait for but the one that it writes beside the record. */
  private void await(Process process, Callable<Boolean> done) throws Exception {
    await(process, () -> done.call() || !hidden().isEmpty(), done);
  }

  private void await(Process process, Callable<Boolean> begun, Callable<Boolean> done)
      throws Exception {
    long length = Files.size(Chain.file(book));
    switch (chance.nextInt(4)) {
      case 0 -> process.waitFor(chance.nextInt(whole), TimeUnit.MILLISECONDS);
      case 1 -> until(process, begun);
      case 2 -> until(process, done);
      default -> until(process, () -> Files.size(Chain.file(book)) > length);
    }
    process.waitFor(chance.nextInt(40), TimeUnit.MILLISECONDS);
  }

  private static void until(Process process, Callable<Boolean> moment) throws Exception {
    while (process.isAlive() && !moment.call()) {
      LockSupport.parkNanos(TICK);
    }
  }

  /** How many files of an unfinished revision are there; it may go away while we look. */
  private int written() throws IOException {
    return hidden().stream()
        .map(folder -> folder.resolve("revision").toFile().list())
        .mapToInt(names -> names == null ? 0 : names.length)
        .sum();
  }

  private List<Path> hidden() throws IOException {
    try (Stream<Path> all = Files.list(records)) {
      return all.filter(each -> each.getFileName().toString().startsWith(".new-")).toList();
    }
  }

  /**
   * @param open a record that may be signed or not
   * @param done whether the files are those of the new state
   */
  private void inspect(String job, Map<String, String> before, String open, boolean done, int lines)
      throws Exception {
    int now = Chain.lines(book).size();
    count("kills", 1);
    count(job + ": " + (now > lines ? "new state" : done ? "new state, no line" : "old state"), 1);
    count(job + ": left unfinished", hidden().isEmpty() ? 0 : 1);
    count("lost records", lost(before, open));
    count("half files", half());
    count("broken chains", Chain.broken(book).size());
  }

  private void count(String what, int number) {
    counts.merge(what, number, Integer::sum);
  }

  /**
   * Records that were there before, or that the ledger tells of, and are not there as they were.
   *
   * @param open a record that may be signed or not
   */
  private int lost(Map<String, String> before, String open) {
    Map<String, String> told = new TreeMap<>();
    Chain.lines(book).forEach(line -> told.putAll(Chain.texts(line.get("outputs"))));
    told.remove(open);
    before.forEach((name, hash) -> told.put("records/" + Tree.DAY + "/" + name, hash));
    Map<String, String> there = Tree.hashes(book, file -> told.containsKey(Tree.name(book, file)));
    return (int)
        told.entrySet().stream()
            .filter(each -> !each.getValue().equals(there.get(each.getKey())))
            .count();
  }

  /** Files in a revision's folder that are not those of its bundle. */
  private int half() throws Exception {
    int half = 0;
    for (int number = 1; Files.exists(records.resolve("r" + number)); number++) {
      Path revision = records.resolve("r" + number);
      Map<String, byte[]> bundle = Zipped.read(revision.resolve("bundle.zip"));
      Map<String, String> manifest = Zipped.manifest(bundle);
      half += manifest.equals(Zipped.hashes(bundle)) ? 0 : 1;
      Map<String, String> told = new TreeMap<>();
      manifest.forEach(
          (name, hash) -> {
            if (name.startsWith("records/")) {
              told.put(name.substring("records/".length()), hash);
            }
          });
      Map<String, String> there = new TreeMap<>();
      Tree.walk(revision)
          .forEach(file -> there.put(Tree.name(revision, file), printed(file, told)));
      there.remove("bundle.zip");
      half += told.equals(there) ? 0 : 1;
    }
    return half;
  }

  private void settled(Map<String, String> before, int lines) throws Exception {
    List<String> left = new ArrayList<>(Chain.faults(book));
    hidden().forEach(folder -> left.add(folder.toString()));
    assertEquals(List.of(), left);
    assertEquals(lines + 1, Chain.lines(book).size());
    assertEquals(0, lost(before, ""));
    assertEquals(0, half());
  }

  /** The hash of a record as it was before anybody signed it. */
  private static String printed(Path file, Map<String, String> told) {
    byte[] bytes = Tree.bytes(file);
    String hash = SourceFile.of("", bytes).sha256();
    boolean asTold = hash.equals(told.get(String.valueOf(file.getFileName())));
    return asTold || !file.toString().endsWith(".pdf")
        ? hash
        : PdfFile.signatures(bytes)
            .map(look -> SourceFile.of("", Arrays.copyOf(bytes, look.printed())).sha256())
            .orElse("unreadable");
  }
}

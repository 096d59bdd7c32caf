package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Kills closes of one day at moments by chance and holds each time: the old state or the new one,
 * every record as the ledger tells it, a chain that holds; and after the next close no trace.
 */
final class Kills {

  private final Path book;
  private final Path day;
  private final Path records;
  private final Random chance;
  private final int status;

  /** How long a close takes on this machine, in ms. */
  private final int whole;

  private final Map<String, Integer> counts = new TreeMap<>();
  private int weight = 4222;

  /**
   * @param status with which a close of this book ends
   */
  Kills(Path book, long seed, int status) throws Exception {
    this.book = book;
    this.day = book.resolve(Tree.DAY);
    this.records = book.resolve("records").resolve(Tree.DAY);
    this.chance = new Random(seed);
    this.status = status;
    long began = System.nanoTime();
    Child.start("close", day).ended().expect(status);
    this.whole = Math.toIntExact(Duration.ofNanos(System.nanoTime() - began).toMillis());
  }

  /** How often what was found. */
  Map<String, Integer> counts() {
    return counts;
  }

  void kill(int times) throws Exception {
    for (int i = 0; i < times; i++) {
      killOnce();
    }
  }

  private void killOnce() throws Exception {
    Tree.edit(day.resolve("chill.csv"), "weight,," + weight, "weight,," + (weight + 1));
    weight++;
    Map<String, String> before = Tree.hashes(records);
    int lines = Chain.lines(book).size();
    Child child = Child.start("close", day, "--as", "MA", "--reason", "weight " + weight);
    await(child.process(), records.resolve("r" + (Chain.revision(book) + 1)));
    child.kill();
    inspect(before, lines);
    Ran.of("close", day, "--as", "MA", "--reason", "weight " + weight).expect(status);
    settled(before, lines);
  }

  /**
   * Waits for the moment of the kill: any time, a number of records written, the revision moved
   * into its place, or the ledger grown; and then a little more.
   */
  private void await(Process process, Path revision) throws Exception {
    int files = chance.nextInt(Tree.names(records.resolve("r1")).size() + 1);
    long length = Files.size(Chain.file(book));
    switch (chance.nextInt(4)) {
      case 0 -> process.waitFor(chance.nextInt(whole), TimeUnit.MILLISECONDS);
      case 1 -> await(process, () -> Files.exists(revision) || written() >= files);
      case 2 -> await(process, () -> Files.exists(revision));
      default -> await(process, () -> Files.size(Chain.file(book)) > length);
    }
    process.waitFor(chance.nextInt(40), TimeUnit.MILLISECONDS);
  }

  private static void await(Process process, Callable<Boolean> moment) throws Exception {
    while (process.isAlive() && !moment.call()) {
      Thread.onSpinWait();
    }
  }

  /** How many files of an unfinished revision are there. */
  private int written() throws IOException {
    return hidden().stream().mapToInt(folder -> Tree.names(folder).size()).sum();
  }

  private List<Path> hidden() throws IOException {
    try (Stream<Path> all = Files.list(records)) {
      return all.filter(each -> each.getFileName().toString().startsWith(".new-")).toList();
    }
  }

  private void inspect(Map<String, String> before, int lines) throws Exception {
    int now = Chain.lines(book).size();
    int revision = Chain.revision(book);
    count("kills", 1);
    boolean moved = Files.exists(records.resolve("r" + (revision + 1)));
    count(now > lines ? "new state" : moved ? "new state without its line" : "old state", 1);
    count("unfinished folders", hidden().isEmpty() ? 0 : 1);
    count("lost records", lost(before));
    count("half files", half());
    count("broken chains", Chain.broken(book).size());
  }

  private void count(String what, int number) {
    counts.merge(what, number, Integer::sum);
  }

  /**
   * Records that were there before, or that the ledger tells of, and are not there as they were.
   */
  private int lost(Map<String, String> before) {
    Map<String, String> told = new TreeMap<>();
    Chain.lines(book).forEach(line -> told.putAll(Chain.texts(line.get("outputs"))));
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
      Map<String, String> there = Tree.hashes(revision);
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
    assertEquals("weight " + weight, Chain.last(book).get("reason").asText());
    assertEquals(0, lost(before));
    assertEquals(0, half());
  }
}

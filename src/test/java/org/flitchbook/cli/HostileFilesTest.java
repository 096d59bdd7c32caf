package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.flitchbook.OutsideProgram;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Files made to hurt the program: each is refused with its place, soon and in little memory. */
@Tag("machines")
final class HostileFilesTest {

  private static final Path ENDLESS = Path.of("/dev/zero");
  private static final String CURE = "2026-02-16/cure.csv";
  private static final String LOGS = "2026-02-24/logs.json";

  @TempDir private Path folder;

  /** Something done to a closed book. */
  @FunctionalInterface
  private interface Spoil {
    void spoil(Path book) throws Exception;
  }

  /**
   * A row of the tables.
   *
   * @param words a command; BOOK and DAY stand for the folders
   * @param said a part of what is said; BOOK stands for the folder
   */
  private record Case(String name, Spoil spoil, String words, int status, String said) {}

  private DynamicTest test(Case each) {
    return DynamicTest.dynamicTest(each.name + ": " + each.words, () -> check(each));
  }

  private void check(Case each) throws Exception {
    Path book = Tree.closedExample(folder);
    try {
      each.spoil.spoil(book);
      Ran ran = Child.small(words(each.words, book));
      String said = each.said.replace("BOOK", book.toString());
      assertAll(
          () -> assertEquals(each.status, ran.status(), ran::out),
          () -> assertTrue(ran.out().contains(said), ran::out),
          () -> assertFalse(ran.out().contains("Exception"), ran::out));
    } finally {
      Tree.delete(book);
    }
  }

  private static Object[] words(String words, Path book) {
    return Arrays.stream(words.split(" "))
        .map(word -> word.replace("DAY", "BOOK/" + Tree.DAY).replace("BOOK", book.toString()))
        .toArray();
  }

  private static Spoil pipe(String file) {
    return book -> {
      Files.deleteIfExists(book.resolve(file));
      OutsideProgram.find("mkfifo");
      assertEquals(
          0, new ProcessBuilder("mkfifo", book.resolve(file).toString()).start().waitFor());
    };
  }

  private static Spoil link(String file, Path to) {
    return book -> {
      Files.deleteIfExists(book.resolve(file));
      Files.createSymbolicLink(book.resolve(file), to);
    };
  }

  private static Spoil sparse(String file) {
    return book -> {
      try (RandomAccessFile large = new RandomAccessFile(book.resolve(file).toFile(), "rw")) {
        large.setLength(5L << 30);
      }
    };
  }

  private static Spoil text(String file, String text) {
    return book -> Files.writeString(book.resolve(file), text);
  }

  private static Spoil edit(String file, String old, String now) {
    return book -> Tree.edit(book.resolve(file), old, now);
  }

  @TestFactory
  Stream<DynamicTest> what_is_no_plain_file_is_refused() {
    String pipe = "a pipe or a device; put a plain file in its place";
    String out = "a link that leads out of the book; put a copy in its place";
    return Stream.of(
            new Case("a pipe", pipe("plan.json"), "check DAY", 3, "plan.json: found " + pipe),
            new Case("a pipe", pipe("plan.json"), "prove BOOK", 2, "BOOK/plan.json: " + pipe),
            new Case("a pipe", pipe(CURE), "check DAY", 3, CURE + ": found something that is"),
            new Case("a pipe", pipe(LOGS), "close DAY", 3, LOGS + ": found something that is"),
            new Case("a pipe", pipe("ledger.jsonl"), "close DAY", 2, "BOOK/ledger.jsonl: " + pipe),
            new Case("a pipe", pipe("ledger.jsonl"), "prove BOOK", 2, "BOOK/ledger.jsonl: " + pipe),
            new Case("a pipe", pipe("ledger.lock"), "close DAY", 2, "BOOK/ledger.lock: " + pipe),
            new Case("a pipe", pipe("p.pdf"), "prove BOOK/p.pdf", 2, "there is no file BOOK/p.pdf"),
            new Case("a pipe", pipe("p.pdf"), "look BOOK/p.pdf", 2, "there is no file BOOK/p.pdf"),
            new Case(
                "a pipe", pipe("p"), "prove BOOK --plan BOOK/p", 2, "can't read BOOK/p: " + pipe),
            new Case(
                "a device", link("plan.json", ENDLESS), "check DAY", 3, "plan.json: found " + out),
            new Case(
                "a device",
                link("ledger.jsonl", ENDLESS),
                "close DAY",
                2,
                "BOOK/ledger.jsonl: " + out),
            new Case(
                "a device",
                link("ledger.lock", ENDLESS),
                "close DAY",
                2,
                "BOOK/ledger.lock: " + out),
            new Case("a device", link("p", ENDLESS), "prove BOOK/p", 2, "there is no file BOOK/p"),
            new Case(
                "a folder",
                book -> {
                  Files.delete(book.resolve("plan.json"));
                  Files.createDirectory(book.resolve("plan.json"));
                },
                "check DAY",
                3,
                "plan.json: found a folder, not a file"),
            new Case("5 GB", sparse("ledger.jsonl"), "close DAY", 2, "a file of more than 512 MB"),
            new Case("5 GB", sparse("plan.json"), "check DAY", 3, "plan.json: found 5120 MB"),
            new Case("5 GB", sparse("p.pdf"), "prove BOOK/p.pdf", 2, "a file of more than 512 MB"))
        .map(this::test);
  }

  /** Whoever makes a book must not get at the files of whoever opens it. */
  @TestFactory
  Stream<DynamicTest> a_link_that_leads_out_of_the_book_is_refused() {
    Path secret = folder.resolve("secret");
    Path other = folder.resolve("other");
    Tree.write(secret, "lot,time,what,item,value,unit,by,instrument,note\n");
    Tree.write(other.resolve("cure.csv"), "lot,time,what,item,value,unit,by,instrument,note\n");
    String out = ": found a link that leads out of the book; put a copy in its place";
    return Stream.of(
            new Case("a sheet", link(CURE, secret), "close DAY", 3, CURE + out),
            new Case(
                "a log", link("2026-02-24/more.csv", secret), "close DAY", 3, "more.csv" + out),
            new Case("a day", link("2026-02-15", other), "close DAY", 3, "2026-02-15" + out),
            new Case("plans", link("plans", other), "close DAY", 3, "plans" + out),
            new Case("templates", link("templates", other), "close DAY", 3, "templates" + out),
            new Case("beside", link("cure.csv", secret), "close DAY", 3, "cure.csv" + out),
            new Case(
                "the records",
                book -> {
                  Tree.delete(book.resolve("records"));
                  Files.createSymbolicLink(book.resolve("records"), other);
                },
                "close DAY",
                2,
                "records: a link that leads out of the book"),
            new Case(
                "the ledger",
                link("ledger.jsonl", secret),
                "close DAY",
                2,
                "ledger.jsonl: a link that leads out of the book"))
        .map(this::test);
  }

  @TestFactory
  Stream<DynamicTest> a_link_that_stays_in_the_book_is_followed() {
    return Stream.of(
            new Case(
                "a sheet",
                book -> {
                  Files.move(book.resolve(CURE), book.resolve("kept"));
                  Files.createSymbolicLink(book.resolve(CURE), Path.of("..", "kept"));
                },
                "close DAY",
                0,
                "Nothing new"))
        .map(this::test);
  }

  /** Patterns that go back over what they read would be held up by these for years. */
  @TestFactory
  Stream<DynamicTest> no_line_holds_up_a_look() {
    return Stream.of(
            ",a=a", "a=a !", "a=", "{\":", "\":", "1", "1 ", "a ", "a,", "<a", "a:a;", "1.1.", "|1")
        .map(
            part ->
                new Case(
                    "a line of " + part,
                    text("2026-02-24/probes-a.csv", part.repeat(16_000 / part.length()) + " !;\n"),
                    "look BOOK/2026-02-24/probes-a.csv",
                    3,
                    "probes-a.csv"))
        .map(this::test);
  }

  @TestFactory
  Stream<DynamicTest> what_stands_in_a_file_takes_neither_time_nor_memory() {
    String probes = "\"probes*.csv\"";
    String row = "26047-B1,2026-02-16 09:12,green weight,,4812,g,MA,S-10,\n";
    String head = "lot,time,what,item,value,unit,by,instrument,note\n";
    String large = "x".repeat(15_000_000);
    return Stream.of(
            new Case(
                "24 stars",
                edit(LOGS, probes, "\"" + "*".repeat(24) + "x\""),
                "check DAY",
                1,
                "no file called"),
            new Case(
                "24 stars",
                edit(LOGS, probes, "\"" + "*a".repeat(24) + "x\""),
                "check DAY",
                1,
                "*a*a*a*a*a*ax"),
            new Case(
                "a long pattern", edit(LOGS, probes, "\"" + large + "\""), "check DAY", 3, LOGS),
            new Case(
                "a long name",
                edit("plan.json", "Maud Achterberg", large),
                "check DAY",
                3,
                "plan.json"),
            new Case(
                "a long name of a house",
                edit("plan.json", "Wrenfold Smokeyard", large),
                "prove BOOK",
                3,
                "plan.json"),
            new Case(
                "a long name of a product",
                edit("plan.json", "Juniper & treacle belly bacon", large),
                "close DAY",
                3,
                "plan.json"),
            new Case(
                "a long key",
                edit("plan.json", "\"people\"", "\"" + large + "\": 1, \"people\""),
                "check DAY",
                3,
                "plan.json"),
            new Case(
                "a long cell",
                edit(CURE, "Drovers End", large.substring(0, 150_000)),
                "check DAY",
                3,
                CURE + ":3: found more than 100000 letters"),
            new Case(
                "a long lot", text(CURE, head + large + row.substring(8)), "check DAY", 3, CURE),
            new Case(
                "a line of 60 MB",
                text(CURE, head + (large + ",").repeat(4)),
                "check DAY",
                3,
                CURE),
            new Case(
                "a line of 60 MB",
                text("2026-02-24/probes-a.csv", "Time," + (large + ",").repeat(4)),
                "look BOOK/2026-02-24/probes-a.csv",
                3,
                "probes-a.csv"),
            new Case("rows alike", text(CURE, head + row.repeat(400_000)), "check DAY", 3, CURE),
            new Case("rows alike", text(CURE, head + row.repeat(400_000)), "close DAY", 3, CURE),
            new Case(
                "rows of no lot",
                text(CURE, head + row.substring(8).repeat(400_000)),
                "check DAY",
                3,
                CURE),
            new Case(
                "deep lists",
                text("plan.json", "[".repeat(20_000_000)),
                "check DAY",
                3,
                "1,000 deep"),
            new Case(
                "deep objects",
                text("plan.json", "{\"a\":".repeat(2_000_000)),
                "check DAY",
                3,
                "1,000 deep"),
            new Case(
                "an exponent",
                edit("plan.json", "\"flitchbook\": 1,", "\"flitchbook\": 1e900000000,"),
                "check DAY",
                3,
                "plan.json:2:flitchbook: found 1E+900000000"),
            new Case(
                "an exponent in the ledger",
                edit("ledger.jsonl", "\"revision\":1", "\"revision\":1e900000000"),
                "prove BOOK",
                1,
                "ledger.jsonl"),
            new Case(
                "an exponent in a limit",
                book -> {
                  Path own = Files.createDirectories(book.resolve("templates/limits"));
                  String us = Files.readString(Path.of("templates", "limits", "us.json"));
                  Files.writeString(
                      own.resolve("us.json"), us.replaceFirst(": (\\d+)", ": 1e900000000"));
                },
                "check DAY",
                3,
                "us.json"))
        .map(this::test);
  }
}

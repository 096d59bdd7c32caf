package org.flitchbook.cli;

import static org.flitchbook.cli.BookDeed.BOUND;
import static org.flitchbook.cli.BookDeed.DAY;
import static org.flitchbook.cli.BookDeed.EVIDENCE;
import static org.flitchbook.cli.BookDeed.KEY;
import static org.flitchbook.cli.BookDeed.KEY_MEMBER;
import static org.flitchbook.cli.BookDeed.LIMIT;
import static org.flitchbook.cli.BookDeed.MEMBER;
import static org.flitchbook.cli.BookDeed.NOT_CARRIED;
import static org.flitchbook.cli.BookDeed.PERSON;
import static org.flitchbook.cli.BookDeed.RECORD;
import static org.flitchbook.cli.BookDeed.RECORD_JSON;
import static org.flitchbook.cli.BookDeed.RECORD_PDF;
import static org.flitchbook.cli.BookDeed.ROW;
import static org.flitchbook.cli.BookDeed.WORD;
import static org.flitchbook.cli.BookDeed.bundle;
import static org.flitchbook.cli.BookDeed.cutBehindFirstSignature;
import static org.flitchbook.cli.BookDeed.day;
import static org.flitchbook.cli.BookDeed.days;
import static org.flitchbook.cli.BookDeed.digit;
import static org.flitchbook.cli.BookDeed.drawn;
import static org.flitchbook.cli.BookDeed.folder;
import static org.flitchbook.cli.BookDeed.json;
import static org.flitchbook.cli.BookDeed.later;
import static org.flitchbook.cli.BookDeed.ledger;
import static org.flitchbook.cli.BookDeed.line;
import static org.flitchbook.cli.BookDeed.names;
import static org.flitchbook.cli.BookDeed.one;
import static org.flitchbook.cli.BookDeed.part;
import static org.flitchbook.cli.BookDeed.plan;
import static org.flitchbook.cli.BookDeed.print;
import static org.flitchbook.cli.BookDeed.records;
import static org.flitchbook.cli.BookDeed.relist;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.flitchbook.cli.BookDeed.Kind;
import org.flitchbook.ledger.Event;
import org.flitchbook.ledger.EventType;

/** What somebody who owns the folder can do to a book that was closed. */
enum BookEdit {
  JSON_DIGIT(Kind.RECORD_JSON, (book, chance) -> json(book, chance, BookDeed::digit)),
  JSON_WORD(
      Kind.RECORD_JSON,
      (book, chance) -> json(book, chance, (text, c) -> part(text, WORD, c, "\"not met\""))),
  JSON_PART_REMOVED(
      Kind.RECORD_JSON,
      (book, chance) -> json(book, chance, (text, c) -> part(text, MEMBER, c, ""))),
  JSON_REMOVED(
      Kind.RECORD_JSON,
      (book, chance) -> {
        Path json = drawn(records(book, ".json"), chance);
        Files.delete(json);
        relist(book, json);
      }),
  JSON_OF_ANOTHER(
      Kind.RECORD_JSON,
      (book, chance) -> {
        List<Path> all = new ArrayList<>(records(book, ".json"));
        Path json = all.remove(chance.nextInt(all.size()));
        Files.write(json, Tree.bytes(drawn(all, chance)));
        relist(book, json);
      }),
  JSON_ADDED(
      Kind.RECORD_JSON,
      (book, chance) -> {
        Path json = folder(book).resolve("26099-X" + chance.nextInt(9) + ".json");
        Files.write(json, Tree.bytes(drawn(records(book, ".json"), chance)));
        relist(book, json);
      }),

  BUNDLED_JSON_DIGIT(Kind.BUNDLE, bundle((files, chance) -> digit(files, RECORD_JSON, chance))),
  BUNDLED_PDF_BYTE(
      Kind.BUNDLE,
      bundle(
          (files, chance) -> {
            byte[] pdf = files.get(drawn(names(files, RECORD_PDF), chance));
            pdf[chance.nextInt(pdf.length)] ^= (byte) (1 << chance.nextInt(8));
          })),
  EVIDENCE_DIGIT(Kind.BUNDLE, bundle((files, chance) -> digit(files, EVIDENCE, chance))),
  EVIDENCE_REMOVED(
      Kind.BUNDLE, bundle((files, chance) -> files.remove(drawn(names(files, EVIDENCE), chance)))),
  BUNDLED_RECORD_REMOVED(
      Kind.BUNDLE, bundle((files, chance) -> files.remove(drawn(names(files, RECORD), chance)))),
  BUNDLED_RECORD_ADDED(
      Kind.BUNDLE,
      bundle(
          (files, chance) ->
              files.put(
                  "records/26099-X" + chance.nextInt(9) + ".json",
                  files.get(drawn(names(files, RECORD_JSON), chance))))),
  BUNDLED_RECORDS_SWAPPED(
      Kind.BUNDLE,
      bundle(
          (files, chance) -> {
            List<String> all = new ArrayList<>(names(files, RECORD));
            String one = all.remove(chance.nextInt(all.size()));
            String other = drawn(all, chance);
            files.put(one, files.put(other, files.get(one)));
          })),
  EVIDENCE_NOT_CARRIED_CHANGED(
      Kind.BUNDLE,
      "a digit of evidence that no record carries, in a bundle far from its book",
      bundle((files, chance) -> digit(files, NOT_CARRIED, chance))),
  EVIDENCE_ADDED(
      Kind.BUNDLE,
      "evidence added that no record carries, to a bundle far from its book",
      bundle(
          (files, chance) ->
              files.put(
                  "evidence/2026-02-24/more" + chance.nextInt(9) + ".csv",
                  files.get("evidence/2026-02-24/smoke.csv")))),
  RECORD_AND_JSON_REMOVED(
      Kind.BUNDLE,
      "a record taken out with its JSON, of a bundle far from its book",
      bundle(
          (files, chance) -> {
            String pdf = drawn(names(files, RECORD_PDF), chance);
            files.remove(pdf);
            files.remove(pdf.replace(".pdf", ".json"));
          })),

  LINE_REMOVED(
      Kind.LEDGER, ledger((events, chance) -> events.remove(chance.nextInt(events.size())))),
  LINE_REPEATED(
      Kind.LEDGER,
      ledger(
          (events, chance) ->
              events.add(chance.nextInt(events.size() + 1), drawn(events, chance)))),
  LINES_SWAPPED(
      Kind.LEDGER,
      ledger(
          (events, chance) -> {
            int one = chance.nextInt(events.size());
            Collections.swap(events, one, (one + 1 + chance.nextInt(events.size() - 1)) % 3);
          })),
  FACT_CHANGED(
      Kind.LEDGER,
      line((event, chance) -> event.facts(one(event.facts(), chance, BookDeed::letter)))),
  FACT_REMOVED(
      Kind.LEDGER,
      line(
          (event, chance) -> {
            Map<String, String> facts = new TreeMap<>(event.facts());
            List<String> words = facts.keySet().stream().filter(w -> !w.equals("role")).toList();
            facts.remove(drawn(words, chance));
            return event.facts(facts);
          })),
  INPUT_CHANGED(
      Kind.LEDGER,
      line(
          (event, chance) ->
              event.files(one(event.inputs(), chance, BookDeed::digit), event.outputs()))),
  OUTPUT_CHANGED(
      Kind.LEDGER,
      line(
          (event, chance) ->
              event.files(event.inputs(), one(event.outputs(), chance, BookDeed::digit)))),
  DAY_CHANGED(
      Kind.LEDGER,
      line((event, chance) -> event.on(DAY.minusDays(chance.nextInt(1, 9)), event.revision()))),
  REVISION_CHANGED(Kind.LEDGER, line((event, chance) -> event.on(DAY, chance.nextInt(2, 9)))),
  BY_CHANGED(Kind.LEDGER, line((event, chance) -> event.by("IQ", event.reason()))),
  REASON_CHANGED(
      Kind.LEDGER,
      line((event, chance) -> event.by(event.by(), "a second look, " + chance.nextInt(99)))),
  TIME_CHANGED(
      Kind.LEDGER,
      ledger(
          (events, chance) -> {
            int line = chance.nextInt(events.size() - 1);
            events.set(line, later(events.get(line), chance));
          })),
  LINE_APPENDED(
      Kind.LEDGER,
      ledger(
          (events, chance) -> {
            Event last = events.get(2);
            List<EventType> types =
                List.of(EventType.SIGNED, EventType.AMENDED, EventType.CLOSED, EventType.RELEASED);
            Map<String, String> now = one(events.get(0).outputs(), chance, BookDeed::digit);
            events.add(
                Event.of(drawn(types, chance), last.at(), last.tool())
                    .on(DAY, chance.nextInt(1, 3))
                    .by("MA", "")
                    .files(events.get(0).outputs(), now)
                    .facts(last.facts()));
          })),
  TIME_OF_TAIL(
      Kind.LEDGER,
      "the time of a line behind the last that a signature states",
      ledger((events, chance) -> events.set(2, later(events.get(2), chance)))),
  LINE_WITHOUT_FILES(
      Kind.LEDGER,
      "a line hung on that lists no file of the records, such as a release",
      ledger(
          (events, chance) ->
              events.add(
                  Event.of(EventType.RELEASED, events.get(2).at(), events.get(2).tool())
                      .on(DAY, 1)
                      .about("26047-B1")
                      .by("IQ", "")))),
  CUT_BEHIND_HEAD(
      Kind.LEDGER,
      "a signature cut off with its line, behind the last that another one states",
      (book, chance) -> cutBehindFirstSignature(book)),

  DIGIT_OF_DAY(Kind.DAY_FILES, (book, chance) -> day(book, chance, BookDeed::digit)),
  ROW_REMOVED(Kind.DAY_FILES, (book, chance) -> day(book, chance, (t, c) -> part(t, ROW, c, ""))),
  ROW_ADDED(
      Kind.DAY_FILES,
      (book, chance) -> day(book, chance, (t, c) -> t + drawn(t.lines().toList(), c) + "\n")),
  DAY_FILE_REMOVED(Kind.DAY_FILES, (book, chance) -> Files.delete(drawn(days(book), chance))),
  DAY_FILE_ADDED(
      Kind.DAY_FILES,
      (book, chance) -> {
        Path like = drawn(days(book), chance);
        String name = "more-" + chance.nextInt(99) + like.getFileName();
        Files.write(like.resolveSibling(name), Tree.bytes(like));
      }),
  DAY_FILES_SWAPPED(
      Kind.DAY_FILES,
      (book, chance) -> {
        List<Path> all = new ArrayList<>(days(book));
        Path one = all.remove(chance.nextInt(all.size()));
        Path other = drawn(all, chance);
        byte[] bytes = Tree.bytes(one);
        Files.write(one, Tree.bytes(other));
        Files.write(other, bytes);
      }),

  PLAN_DIGIT(Kind.PLAN, (book, chance) -> plan(book, chance, (t, c) -> digit(t, c))),
  LIMIT_CHANGED(
      Kind.PLAN,
      (book, chance) -> plan(book, chance, (t, c) -> part(t, BOUND, c, "\"9000" + c.nextInt(99)))),
  LIMIT_REMOVED(Kind.PLAN, (book, chance) -> plan(book, chance, (t, c) -> part(t, LIMIT, c, ""))),
  PERSON_CHANGED(
      Kind.PLAN, (book, chance) -> plan(book, chance, (t, c) -> part(t, PERSON, c, "\"Nan "))),
  KEY_CHANGED(Kind.PLAN, (book, chance) -> plan(book, chance, (t, c) -> part(t, KEY, c, print(c)))),
  KEY_REMOVED(
      Kind.PLAN, (book, chance) -> plan(book, chance, (t, c) -> part(t, KEY_MEMBER, c, "")));

  private final Kind kind;
  private final String unnoticed;

  @SuppressWarnings("ImmutableEnumChecker") // a deed is a function without a state
  private final BookDeed deed;

  BookEdit(Kind kind, BookDeed deed) {
    this(kind, "", deed);
  }

  /**
   * @param unnoticed what nothing in the book can show
   */
  BookEdit(Kind kind, String unnoticed, BookDeed deed) {
    this.kind = kind;
    this.unnoticed = unnoticed;
    this.deed = deed;
  }

  static List<BookEdit> noticed(Kind kind) {
    return Stream.of(values())
        .filter(each -> each.kind == kind && each.unnoticed.isEmpty())
        .toList();
  }

  static List<BookEdit> unnoticed() {
    return Stream.of(values()).filter(each -> !each.unnoticed.isEmpty()).toList();
  }

  boolean isOf(Kind which) {
    return kind == which;
  }

  String whyUnnoticed() {
    return unnoticed;
  }

  void to(Path book, SplittableRandom chance) throws Exception {
    deed.to(book, chance);
  }

  /** In words, such as {@code line removed}. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}

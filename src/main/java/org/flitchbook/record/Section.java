package org.flitchbook.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flitchbook.archive.SignerRole;
import org.flitchbook.check.Judgement;
import org.flitchbook.check.Verdict;
import org.flitchbook.document.Block;
import org.flitchbook.document.Block.Facts;
import org.flitchbook.document.Block.Signatures;
import org.flitchbook.document.Table;
import org.flitchbook.document.Text;
import org.flitchbook.document.Tone;
import org.flitchbook.input.Fault;
import org.flitchbook.input.Severity;
import org.flitchbook.lot.Lot;
import org.flitchbook.message.Argument;
import org.flitchbook.message.Message;
import org.flitchbook.plan.Product;

/** A part of a record. */
abstract class Section extends Phrases {

  static final Message BY = Message.say("record.head.by", "By");
  static final Message BY_HAND = Message.say("record.core.by-hand", "by hand");
  static final Message DEVIATIONS =
      Message.say("record.batch.deviations", "Deviations and remarks");
  static final Message DOUBTS = Message.say("record.batch.doubts", "Data in doubt");
  static final Message ERROR = Message.say("record.instruments.error", "Error");
  static final Message FOUND = Message.say("record.head.found", "What was found");
  static final Message ITEM = Message.say("record.head.item", "Item");
  static final Message LIMIT = Message.say("record.head.limit", "Limit");
  static final Message LIMIT_VALUE = Message.say("record.head.limit-value", "Limit value");
  static final Message LOT = Message.say("record.head.lot", "Lot");
  static final Message PLAN_SAYS = Message.say("record.head.plan-says", "The plan says");
  static final Message PROBE = Message.say("record.head.probe", "Probe");
  static final Message REMARK = Message.say("record.head.remark", "Remark");
  static final Message STEP = Message.say("record.head.step", "Step");
  static final Message TIME = Message.say("record.head.time", "Time");
  static final Message VALUE = Message.say("record.head.value", "Value");
  static final Message WARM = Message.say("record.batch.warm", "Time in the warm");
  static final Message WHAT = Message.say("record.head.what", "What");
  static final Message WHY = Message.say("record.left-out.why", "Why");
  static final Message WITH = Message.say("record.head.with", "With");
  static final Message WORST_VALUE = Message.say("record.worst-value", "Worst value");

  final DayJudged day;

  Section(DayJudged day) {
    super(day.plan());
    this.day = day;
  }

  final Block.Heading heading(Message text) {
    return new Block.Heading(2, say(text));
  }

  final Block.Heading heading(String id, String english, Object... values) {
    return new Block.Heading(2, say(id, english, values));
  }

  final Block.Heading subheading(String id, String english) {
    return new Block.Heading(3, say(id, english));
  }

  final Block.Paragraph paragraph(String text) {
    return new Block.Paragraph(text(text, PLAIN));
  }

  final Block.Paragraph strong(String text) {
    return new Block.Paragraph(text(text, Text.Style.STRONG));
  }

  final Block.Paragraph paragraph(String id, String english, Object... values) {
    return paragraph(say(id, english, values));
  }

  /** So that a part is never missing without a word. */
  final Block.Paragraph nothingOf(Message caption) {
    return paragraph("record.nothing-of", "{0}: NOT RECORDED", caption);
  }

  final Block.Paragraph nothingOf(String id, String english) {
    return nothingOf(Message.say(id, english));
  }

  /** An empty value is never left blank. */
  final Facts.Fact fact(String label, String value) {
    return new Facts.Fact(label, text(orNotRecorded(value), PLAIN));
  }

  final Facts.Fact fact(Message label, String value) {
    return fact(say(label), value);
  }

  final Facts.Fact fact(String id, String english, String value) {
    return fact(say(id, english), value);
  }

  /** Who signs and what that states; the name is written by hand. */
  final Signatures.Box box(String field, String role, String statement) {
    return new Signatures.Box(field, role, "", statement);
  }

  /** Which signatures make the record whole; nothing where the plan asks for none. */
  final Optional<Block> asked() {
    List<String> roles = day.plan().establishment().signatures();
    return roles.isEmpty()
        ? Optional.empty()
        : Optional.of(
            note(
                say(
                    "record.signatures.asked",
                    "The plan asks for these signatures: {0}. Without them the record is not"
                        + " whole.",
                    roles.stream()
                        .map(role -> say(SignerRole.named(role).message()))
                        .collect(Collectors.joining(", "))),
                ""));
  }

  final <T> TableBuilder<T> table(Message caption, List<T> items) {
    return new TableBuilder<>(say(caption), items);
  }

  final <T> TableBuilder<T> table(String id, String english, List<T> items) {
    return new TableBuilder<>(say(id, english), items);
  }

  /** A table put together column by column: under each head what stands there of every item. */
  final class TableBuilder<T> {

    private final String caption;
    private final List<T> items;
    private final List<Table.Column> columns = new ArrayList<>();
    private final List<Function<T, Table.Cell>> cells = new ArrayList<>();

    private TableBuilder(String caption, List<T> items) {
      this.caption = caption;
      this.items = items;
    }

    TableBuilder<T> column(Message head, int weight, Function<T, String> words) {
      return cells(head, Table.Align.LEFT, weight, item -> cell(words.apply(item), PLAIN));
    }

    TableBuilder<T> column(String id, String english, int weight, Function<T, String> words) {
      return column(Message.say(id, english), weight, words);
    }

    TableBuilder<T> number(Message head, int weight, Function<T, String> number) {
      return cells(head, Table.Align.RIGHT, weight, item -> cell(number.apply(item), PLAIN));
    }

    TableBuilder<T> number(String id, String english, int weight, Function<T, String> number) {
      return number(Message.say(id, english), weight, number);
    }

    /** Where each item stands in its file. */
    TableBuilder<T> where(int weight, Function<T, ? extends Argument> place) {
      Message head = Message.say("record.head.where", "Source row");
      return cells(
          head, Table.Align.LEFT, weight, i -> cell(say(place.apply(i)), Text.Style.MUTED));
    }

    TableBuilder<T> verdict(int weight, Function<T, Verdict> verdict) {
      Message head = Message.say("record.head.verdict", "Verdict");
      return cells(
          head,
          Table.Align.LEFT,
          weight,
          verdict.andThen(each -> new Table.Cell(text(say(each), PLAIN), tone(each))));
    }

    /** The codes of lots, which lead to their records. */
    TableBuilder<T> record(int weight, Function<T, String> lot) {
      return cells(LOT, Table.Align.LEFT, weight, item -> leading(lot.apply(item)));
    }

    private Table.Cell leading(String lot) {
      return new Table.Cell(Text.leading(lot, new Text.Target.File(lot + ".pdf")), Tone.PLAIN);
    }

    /** A column of cells that are laid out already. */
    TableBuilder<T> cells(
        Message head, Table.Align align, int weight, Function<T, Table.Cell> cell) {
      columns.add(new Table.Column(say(head), align, weight, columns.isEmpty()));
      cells.add(cell);
      return this;
    }

    /** The table; empty where it has no row. */
    Optional<Block> ifAny() {
      return items.isEmpty() ? Optional.empty() : Optional.of(table());
    }

    /** The table, or another block where it has no row. */
    Block or(Block instead) {
      return items.isEmpty() ? instead : table();
    }

    Table table() {
      return new Table(
          caption,
          columns,
          items.stream()
              .map(item -> new Table.Row(cells.stream().map(cell -> cell.apply(item)).toList()))
              .toList());
    }
  }

  final Table.Cell cell(String words, Text.Style style) {
    return new Table.Cell(text(words, style), Tone.PLAIN);
  }

  /** What is said of faults in the data, behind the columns that say which ones they are. */
  final TableBuilder<Fault> faults(TableBuilder<Fault> table) {
    return table
        .column("record.head.follows", "What follows", 6, this::follows)
        .column("record.head.place", "Where", 12, fault -> say(fault.place()))
        .column("record.head.fault-found", "Found", 16, fault -> say(fault.found()))
        .column("record.head.fault-expected", "Expected", 14, fault -> say(fault.expected()));
  }

  /** What a fault in the data asks of people. */
  private String follows(Fault fault) {
    if (fault.explained().isPresent() && !fault.isInDoubt()) {
      return say("follows.explained", "explained: judged as was said");
    }
    if (fault.is(Severity.ASK) && !fault.isOpen()) {
      return say(
          "follows.not-borne-out",
          "explained, but nothing bears it out: what rests on it is not met");
    }
    return switch (fault.severity()) {
      case STOP -> say("follows.stop", "stop: no verdict");
      case ASK -> say("follows.ask", "ask: explain it before release");
      default -> say("follows.note", "note: no verdict changes");
    };
  }

  /** The blocks of a record while it is put together, in their order. */
  static final class Blocks {

    private final List<Block> list = new ArrayList<>();

    Blocks add(Block block) {
      return add(List.of(block));
    }

    Blocks add(Optional<? extends Block> block) {
      return add(block.stream().toList());
    }

    Blocks add(List<? extends Block> more) {
      list.addAll(more);
      return this;
    }

    List<Block> list() {
      return List.copyOf(list);
    }
  }

  /** Small print, of which the second part may be empty. */
  final Block.Note note(String text, String more) {
    return new Block.Note(text((text + " " + more).strip(), PLAIN));
  }

  final String product(Lot lot) {
    return orNotRecorded(lot.product().map(Product::name).orElse(""));
  }

  /** How many faults in the data are open. */
  final String toExplain(int doubts) {
    return count(
        "record.evidence.open", doubts, "{0} doubt to be explained", "{0} doubts to be explained");
  }

  final Block.Caution caution() {
    return new Block.Caution(
        say(
            "record.caution",
            "Curing salt is toxic in excess: weigh it, never spoon it. The limits are those of"
                + " the plan named here; confirm them with the local authority or a process"
                + " authority. This record says which limits were met, not met or not shown. It"
                + " does not say that food is safe, and it replaces no licensed decision."));
  }

  /** What left of a lot, as the first words of a banner; empty where nothing left. */
  String left(Judgement judgement) {
    return judgement.left().stream().map(left -> say(left) + ". ").collect(Collectors.joining());
  }
}

package org.flitchbook.record;

import java.util.List;
import org.flitchbook.document.Block;
import org.flitchbook.document.Document;
import org.flitchbook.plan.Establishment;

/** What stands on every page of a record. */
final class Frame {

  private static final int SHORT_HASH = 12;

  private final DayJudged day;

  Frame(DayJudged day) {
    this.day = day;
  }

  /**
   * A record of the day.
   *
   * @param about the product, or what the record is about
   * @param name the lot's code, or the record's own name
   */
  Document document(String title, String about, String name, List<Block> blocks) {
    Establishment house = day.plan().establishment();
    Phrases phrases = day.phrases();
    Document.Running running =
        new Document.Running(
            house(phrases, house),
            about.isEmpty() ? title : about + ", " + name,
            phrases.say(
                "record.frame.plan",
                "Plan version {0}, record {1}, plan {2}",
                day.plan().version(),
                day.day() + "/" + name + revision(),
                day.plan().sha256().substring(0, SHORT_HASH)),
            phrases.say(
                "record.frame.times",
                "Times in {0}, {1}",
                house.zone(),
                phrases.zone(day.moment())));
    return new Document(
        titled(title),
        about.isEmpty() ? house.name() : about,
        day.plan().words(),
        day.book() + "/" + day.day() + "/" + name + revision(),
        day.moment(),
        Document.Paper.parse(house.paper()).orElse(Document.Paper.A4),
        running,
        blocks);
  }

  private static String house(Phrases phrases, Establishment house) {
    return house.number().isEmpty()
        ? house.name() + ", " + house.address()
        : phrases.say(
            "record.frame.house",
            "{0}, est. {1}, {2}",
            house.name(),
            house.number(),
            house.address());
  }

  private String titled(String title) {
    return day.filing().isAmendment()
        ? day.phrases()
            .say("record.filing.revision", "{0}, revision {1}", title, day.filing().revision())
        : title;
  }

  private String revision() {
    return day.filing().isFiled() ? ", r" + day.filing().revision() : "";
  }
}

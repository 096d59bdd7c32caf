package org.flitchbook.record;

import static org.flitchbook.message.Message.say;

import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.flitchbook.document.Text;
import org.flitchbook.words.Words;

/** Text for a document, in which a number is never parted from its unit at a line's end. */
final class Bound {

  private static final Pattern NUMBER_AND_UNIT =
      Pattern.compile("(\\d) (?=(?:°F|°C|ppm|%|mm|min|kg|g|oz|lb|h|d|s)(?![\\p{L}]))");

  private final Pattern atMostOrLeast;

  /** Binds the words before a limit's number too, where the language puts them before it. */
  Bound(Words words) {
    String before =
        Stream.of(
                say("words.at-most", "at most {0}", ""), say("words.at-least", "at least {0}", ""))
            .map(each -> Pattern.quote(each.in(words).stripTrailing()))
            .collect(Collectors.joining("|"));
    atMostOrLeast = Pattern.compile("(" + before + ") (?=\\d)");
  }

  Text of(String text) {
    return Text.of(bound(text));
  }

  Text strong(String text) {
    return Text.strong(bound(text));
  }

  Text muted(String text) {
    return Text.muted(bound(text));
  }

  Text leading(String text, Text.Target target) {
    return Text.leading(bound(text), target);
  }

  Text.Span span(String text, Text.Style style) {
    return new Text.Span(bound(text), style);
  }

  String bound(String text) {
    String units = NUMBER_AND_UNIT.matcher(text).replaceAll("$1\u00a0");
    return atMostOrLeast.matcher(units).replaceAll("$1\u00a0");
  }
}

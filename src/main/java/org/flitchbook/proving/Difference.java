package org.flitchbook.proving;

import static org.flitchbook.message.Message.say;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.flitchbook.job.Session;
import org.flitchbook.message.Message;

/**
 * Something that no longer follows.
 *
 * @param lot empty where it is about all of them
 * @param about the limit's id or the rule of a doubt; empty where it is about the lot as a whole
 * @param grounds by which a change of judging may explain it: the same, {@code kind duration} of a
 *     limit of that kind, {@code not shown to pending} of a verdict, each rule of which something
 *     else is in doubt about the lot, and {@link #EXPLANATION}
 */
record Difference(String lot, String about, Set<String> grounds, Message printed, Message again) {

  /** Something of the lot counted as borne out by what people said of it, and no longer does. */
  static final String EXPLANATION = "explanation";

  Message sentence() {
    Message where =
        about.isEmpty()
            ? say("proving.of-lot", "lot {0}", lot)
            : say("proving.of-limit", "lot {0}, {1}", lot, about);
    return say(
        "proving.difference",
        "{0}: the record says {1}, and what it carries gives {2}",
        where,
        printed,
        again);
  }

  Map<String, Object> json(Session session) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("lot", lot);
    tree.put("limit", about);
    tree.put("printed", session.say(printed));
    tree.put("again", session.say(again));
    return tree;
  }
}

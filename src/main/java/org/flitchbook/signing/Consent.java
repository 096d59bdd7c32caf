package org.flitchbook.signing;

import static org.flitchbook.message.Message.say;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;

/** The yes of a person who was shown what the record says. */
final class Consent {

  private Consent() {}

  /**
   * Shows it and asks.
   *
   * @throws UsageException where the answer is not yes, or where nobody is there to give one
   */
  static void ask(Session session, List<Message> shown) {
    Optional<String> answer = session.ask(shown, say("signing.ask", "Sign it? yes or no: "));
    if (answer.isEmpty()) {
      throw new UsageException(
              "signing.nobody-asked",
              "nothing was signed, since nobody is here to say yes to this; --yes says it for a"
                  + " person who has read it:")
          .after(shown);
    }
    String yes = session.say(say("signing.yes", "yes"));
    if (!folded(answer.get()).equals(folded(yes))) {
      throw new UsageException("signing.declined", "the answer was not yes: nothing was signed");
    }
  }

  /** Without case, accents and white space. */
  private static String folded(String word) {
    return Normalizer.normalize(word, Normalizer.Form.NFD)
        .replaceAll("[\\p{M}\\s]", "")
        .toLowerCase(Locale.ROOT);
  }
}

package org.flitchbook.plan;

import java.util.List;
import java.util.Optional;
import org.flitchbook.input.SourceFile;
import org.flitchbook.json.Fields;
import org.flitchbook.json.Node;
import org.flitchbook.message.Message;
import org.flitchbook.words.Words;

/**
 * In which languages a plan can speak, and in which it does.
 *
 * @param words empty where the plan's language can't be had, which is a fault
 */
record Wording(List<String> languages, Optional<Words> words) {

  /** Looks the language up before the rest of the plan is read, since all of it is told in it. */
  static Wording of(Fields plan, List<SourceFile> templates, List<String> own) {
    List<String> languages = Words.languages(templates);
    String language = language(plan);
    return languages.isEmpty() || languages.contains(language)
        ? new Wording(languages, Words.choose(language, templates, own, plan.faults()))
        : new Wording(languages, Optional.empty());
  }

  /** Whatever language the plan states. */
  static Wording of(Words words) {
    return new Wording(List.of(), Optional.of(words));
  }

  String say(Message message) {
    return words.map(message::in).orElse("");
  }

  /** As a source's edition names the plan itself. */
  String edition(String version) {
    return words.map(known -> known.say("planned.edition", "plan version {0}", version)).orElse("");
  }

  private static String language(Fields plan) {
    return plan.object().members().get("establishment") instanceof Node.Obj house
            && house.members().get("language") instanceof Node.Text text
        ? text.value()
        : Words.DEFAULT;
  }

  /** The plan's language; one that there is no wording of is a fault. */
  void check(Fields house) {
    house.optionalParsed(
        "language",
        "one of " + String.join(", ", languages),
        text -> Optional.of(text).filter(each -> languages.isEmpty() || languages.contains(each)));
  }
}

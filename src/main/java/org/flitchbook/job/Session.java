package org.flitchbook.job;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.flitchbook.message.Language;
import org.flitchbook.message.Message;

/** One call for a job: what the job may take from its surroundings, and the language it speaks. */
public final class Session {

  private final Consumer<String> progress;
  private final Clock clock;
  private final Function<String, Optional<String>> ask;
  private final String tool;
  private final List<Message> notes = new ArrayList<>();
  private Language language = Language.ENGLISH;

  /**
   * A session that speaks English until it is told otherwise.
   *
   * @param progress takes what is being done, for long work on a terminal
   * @param clock gives the time of a line in the ledger; nothing else asks it
   * @param ask puts a question to a person; empty where nobody is there to be asked
   * @param tool the version of the program
   */
  public Session(
      Consumer<String> progress, Clock clock, Function<String, Optional<String>> ask, String tool) {
    this.progress = progress;
    this.clock = clock;
    this.ask = ask;
    this.tool = tool;
  }

  /** The language that it speaks. */
  public Language language() {
    return language;
  }

  /** From now on what is said is in this language. */
  public void speak(Language spoken) {
    language = spoken;
  }

  /** As it is said to the person. */
  public String say(Message message) {
    return message.in(language);
  }

  /** Each message on a line of its own. */
  public String lines(List<Message> messages) {
    return messages.stream().map(each -> say(each) + "\n").collect(Collectors.joining());
  }

  /** What the person should know beside the result; it is said after it. */
  public void note(Message note) {
    notes.add(note);
  }

  /** What was noted, in its order. */
  public List<Message> notes() {
    return List.copyOf(notes);
  }

  public void progress(Message doing) {
    progress.accept(say(doing));
  }

  /**
   * What a person answers; empty where nobody does.
   *
   * @param before what the person should know, on a line each
   */
  public Optional<String> ask(List<Message> before, Message question) {
    return ask.apply(lines(before) + say(question));
  }

  public Instant now() {
    return Instant.now(clock);
  }

  /** The version of the program. */
  public String tool() {
    return tool;
  }
}

package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.flitchbook.book.BookFolder;
import org.flitchbook.closing.Closing;
import org.flitchbook.job.ExitStatus;
import org.flitchbook.job.JobResult;
import org.flitchbook.job.Session;
import org.flitchbook.json.Json;
import org.flitchbook.judging.Judging;
import org.flitchbook.look.Look;
import org.flitchbook.planning.PlanCheck;
import org.flitchbook.proving.Proving;
import org.flitchbook.signing.RecordSigning;
import org.flitchbook.tracing.Tracing;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The commands, those of keys aside. */
final class Commands {

  private Commands() {}

  /** A command whose result is a text. */
  @Command(mixinStandardHelpOptions = true)
  abstract static class Job implements Callable<Integer> {

    @Spec private CommandSpec spec;

    abstract JobResult run(Session session);

    boolean isJson() {
      return false;
    }

    @Override
    public Integer call() {
      return Terminal.run(spec, isJson(), this::run);
    }
  }

  /** A command whose result is a text, or a JSON document where that is wanted. */
  abstract static class JsonJob extends Job {

    @Option(names = "--json", description = "one JSON document instead of text")
    private boolean json;

    @Override
    boolean isJson() {
      return json;
    }
  }

  @Command(
      name = "check",
      description = "Judges a day's lots, or all lots of a book at its last day. Writes nothing.")
  static final class Check extends JsonJob {

    @Parameters(
        paramLabel = "DAY|BOOK",
        description = "a day's folder, such as demo-data/wrenfold/2026-02-24, or a book's")
    private Path where;

    @Option(
        names = "--at",
        paramLabel = "TIME",
        description = "the moment judged, such as 2026-02-24T18:00; else the day's end")
    private Optional<String> at;

    @Override
    JobResult run(Session session) {
      return Judging.check(session, where, at);
    }
  }

  @Command(name = "close", description = "Judges every lot of a day and writes its records.")
  static final class Close extends Job {

    @Parameters(
        paramLabel = "DAY",
        description = "a day's folder, such as demo-data/wrenfold/2026-02-24")
    private Path where;

    @Option(
        names = "--out",
        paramLabel = "DIR",
        description = "write there and leave the book untouched; else under the book's records")
    private Optional<Path> out;

    @Option(
        names = "--at",
        paramLabel = "TIME",
        description = "the moment judged, for a day closed while something still chills")
    private Optional<String> at;

    @Option(
        names = "--as",
        paramLabel = "INITIALS",
        description = "who closes, by the initials in the plan")
    private Optional<String> by;

    @Option(
        names = "--reason",
        paramLabel = "TEXT",
        description = "why a day that was closed is closed again, its sheets having changed")
    private Optional<String> reason;

    @Override
    JobResult run(Session session) {
      return Closing.close(session, where, new Closing.Request(out, at, by, reason));
    }
  }

  @Command(
      name = "look",
      description = "Says what is in a probe log, and proposes an entry for logs.json.")
  static final class LookAtLog extends JsonJob {

    @Parameters(paramLabel = "FILE", description = "a log as the logger exported it")
    private Path file;

    @Override
    JobResult run(Session session) {
      BookFolder.FileRead read = BookFolder.file(session, file);
      return read.file()
          .map(log -> Look.at(log, session.language(), BookFolder.toolTemplates()))
          .map(LookAtLog::result)
          .orElseGet(() -> JobResult.broken(read.faults()));
    }

    private static JobResult result(Look.Result seen) {
      return seen.faults().isEmpty()
          ? JobResult.of(ExitStatus.WELL, seen.text(), Json.write(seen.tree()))
          : JobResult.broken(seen.faults());
    }
  }

  @Command(
      name = "prove",
      description =
          "Proves a record, also far from its book, or a book: its signatures, what was changed,"
              + " and the verdicts judged again. Writes nothing.")
  static final class Prove extends JsonJob {

    @Parameters(
        paramLabel = "FILE|BOOK",
        description = "a record, as PDF, a bundle.zip, or a book's folder")
    private Path what;

    @Option(
        names = "--plan",
        paramLabel = "PLAN",
        description = "the plan.json whose keys count; else that of the book it lies in")
    private Optional<Path> plan;

    @Option(
        names = "--fingerprint",
        paramLabel = "SHA-256",
        description = "a key that must have signed; may be given again")
    private @Nullable List<String> fingerprints;

    @Option(
        names = "--signed-by",
        split = ",",
        paramLabel = "ROLE",
        description = "maker, reviewer or both: who must have signed; beside what the plan asks")
    private @Nullable List<String> signers;

    @Option(
        names = "--head",
        paramLabel = "HEAD",
        description =
            "a line of the ledger as a sheet, close or sign states it, such as \"12 3f2a 9c1b 77aa"
                + " 0c1d\", or a picture of the code on a sheet; may be given again")
    private @Nullable List<String> heads;

    @Override
    JobResult run(Session session) {
      return Proving.prove(
          session, what, new Proving.Request(plan, all(fingerprints), all(signers), all(heads)));
    }

    private static List<String> all(@Nullable List<String> given) {
      return given == null ? List.of() : given;
    }
  }

  @Command(
      name = "sign",
      description = "Signs a record as its maker or as a reviewer, with the person's key.")
  static final class Sign extends Job {

    @Parameters(paramLabel = "FILE", description = "the record, as PDF")
    private Path file;

    @Option(
        names = "--as",
        required = true,
        paramLabel = "INITIALS",
        description = "who signs, by the initials in the plan")
    private String initials;

    @Option(
        names = "--role",
        paramLabel = "ROLE",
        description = "maker or reviewer; else the one that is open to the person")
    private Optional<String> role;

    @Option(
        names = "--reason",
        paramLabel = "TEXT",
        description = "what the person adds, at most 60 characters")
    private Optional<String> reason;

    @Option(
        names = "--book",
        paramLabel = "BOOK",
        description = "whose plan counts; else the one that the record lies in or carries")
    private Optional<Path> book;

    @Option(
        names = "--without-timestamp",
        description = "don't ask the time stamp server that the plan names")
    private boolean unstamped;

    @Option(
        names = "--yes",
        description = "sign without being asked; what the record says is shown all the same")
    private boolean agreed;

    @Mixin private KeyCommand.Folder keys;

    @Mixin private PassphraseOptions passphrase;

    @Override
    JobResult run(Session session) {
      return RecordSigning.sign(
          session,
          new RecordSigning.Request(
              file, initials, role, reason, keys.path(), book, !unstamped, agreed),
          passphrase);
    }
  }

  @Command(
      name = "trace",
      description =
          "Tells everything that a code touches: lots, what went in, where it went, what is left."
              + " Writes nothing.")
  static final class Trace extends JsonJob {

    @Parameters(
        paramLabel = "CODE",
        description =
            "of a lot, an ingredient's or a supplier's lot, an instrument or a customer; case is"
                + " ignored")
    private String code;

    @Option(
        names = "--book",
        paramLabel = "BOOK",
        defaultValue = ".",
        description = "the book's folder; else the folder in which the command is given")
    private Path book;

    @Override
    JobResult run(Session session) {
      return Tracing.trace(session, book, code);
    }
  }

  @Command(
      name = "plan",
      description = "Looks after the plan of a book.",
      mixinStandardHelpOptions = true)
  static final class Plan implements Runnable {

    @Spec private CommandSpec spec;

    @Override
    public void run() {
      throw new ParameterException(
          spec.commandLine(), "Say what to do with the plan." + System.lineSeparator());
    }

    @Command(
        name = "check",
        description =
            "Reads the plan, lists every fault of it and every hazard that it leaves out.",
        mixinStandardHelpOptions = true)
    int check(@Parameters(paramLabel = "BOOK", description = "a book's folder") Path where) {
      return Terminal.run(spec, false, session -> PlanCheck.check(session, where));
    }
  }
}

package org.flitchbook.cli;

import java.nio.file.Path;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.flitchbook.Golden;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** What people and programs read, word by word: help, findings, JSON and print of the demo day. */
final class GoldenTest {

  /** Sizes and hashes that change with every wording, each where it is listed as carried. */
  private static final Pattern OF_THE_TOOL =
      Pattern.compile("((?:tool|findings)/\\S+ [a-z]+) \\d+ – – [0-9a-f](?:\\s*[0-9a-f]){63}");

  private static Path records;

  @BeforeAll
  static void close() {
    records = DemoDay.records();
  }

  @TestFactory
  Stream<DynamicTest> the_help_of_every_command() {
    return Stream.of(
            "",
            "check ",
            "close ",
            "key ",
            "key new ",
            "key show ",
            "key retire ",
            "look ",
            "plan ",
            "plan check ",
            "prove ",
            "sign ",
            "trace ")
        .map(command -> DynamicTest.dynamicTest(command + "--help", () -> help(command)));
  }

  private static void help(String command) {
    Ran ran = Ran.of((Object[]) (command + "--help").split(" ", -1)).expect(0);
    Golden.check("cli/" + command.replace(' ', '-') + "help.out", ran.out());
  }

  @TestFactory
  Stream<DynamicTest> what_is_said_of_the_demo_day() {
    Path day = Tree.DEMO.resolve(Tree.DAY);
    return Stream.of(
        DynamicTest.dynamicTest(
            "as text", () -> Golden.check("cli/demo/check.out", Ran.of("check", day).out())),
        DynamicTest.dynamicTest(
            "as JSON",
            () -> Golden.check("cli/demo/day.json", Tree.text(records.resolve("day.json")))),
        DynamicTest.dynamicTest(
            "of its plan",
            () -> Golden.check("cli/demo/plan.out", Ran.of("plan", "check", Tree.DEMO).out())));
  }

  @TestFactory
  Stream<DynamicTest> what_is_printed_of_the_demo_day() {
    return DemoDay.PRINTS.stream()
        .map(name -> DynamicTest.dynamicTest(name + ".pdf", () -> print(name)));
  }

  private static void print(String name) {
    Golden.check("cli/demo/" + name + ".txt", steady(records.resolve(name + ".pdf")));
  }

  static String steady(Path print) {
    return OF_THE_TOOL.matcher(Pdfs.text(print)).replaceAll("$1 … – – …");
  }
}

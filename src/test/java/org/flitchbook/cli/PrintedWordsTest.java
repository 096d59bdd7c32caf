package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;

/** What a record says of the product's class, and whether its sums are what they come to. */
final class PrintedWordsTest {

  static final List<String> LOTS =
      DemoDay.PRINTS.stream().filter(name -> name.startsWith("26")).toList();

  /** The juniper, mustard seed and black pepper bacons; the loin of 26043-L1 is fully cooked. */
  static final List<String> NOT_FULLY_COOKED =
      LOTS.stream().filter(lot -> !lot.equals("26043-L1")).toList();

  /** The class itself, and the rule set's own sentence on what of it was not read. */
  private static final List<String> ALLOWED =
      List.of("not fully cooked", "FSIS keeps apart the come-up of product cooked in part");

  private static final Pattern COOKED = Pattern.compile("\\bcooked\\b");
  private static final Pattern WORKED =
      Pattern.compile("Ingoing [a-z ]+? ([(\\d][^=\\n]*) = ([\\d.]+) (ppm|%)(?= |\\n)");

  private static Path records;

  @BeforeAll
  static void close() {
    records = DemoDay.records();
  }

  /** The text with every line's end as a space. */
  private static String text(String lot) {
    return Pdfs.text(records.resolve(lot + ".pdf")).replaceAll("\\s+", " ");
  }

  /** As it runs on from page to page, without the line at the head and the foot of each. */
  private static String running(String lot) {
    String[] pages = Pdfs.text(records.resolve(lot + ".pdf")).split("\f\n", -1);
    return Arrays.stream(pages)
        .map(page -> page.lines().toList())
        .filter(lines -> lines.size() > 2)
        .flatMap(lines -> lines.subList(1, lines.size() - 1).stream())
        .collect(Collectors.joining(" "))
        .replaceAll("\\s+", " ");
  }

  private static boolean saysCooked(String text) {
    String rest = text.toLowerCase(Locale.ROOT);
    for (String phrase : ALLOWED) {
      rest = rest.replace(phrase.toLowerCase(Locale.ROOT), " ");
    }
    return COOKED.matcher(rest).find();
  }

  @ParameterizedTest
  @FieldSource("NOT_FULLY_COOKED")
  void a_product_that_is_not_fully_cooked_is_never_called_cooked(String lot) {
    String text = text(lot);
    assertTrue(text.contains("heat treated, not fully cooked"), text);
    assertFalse(saysCooked(text), text);
  }

  @ParameterizedTest
  @CsvSource({
    "'Class fully cooked',                                                     true",
    "the piece was Cooked through,                                           true",
    "not cooked,                                                             true",
    "'heat treated, not fully cooked, not shelf stable',                     false",
    "cooking time,                                                           false"
  })
  void the_word_would_be_found(String text, boolean found) {
    assertEquals(found, saysCooked(text));
  }

  @Test
  void the_cooked_loin_is_called_so() {
    assertTrue(saysCooked(text("26043-L1")));
  }

  @ParameterizedTest
  @FieldSource("LOTS")
  void every_sum_of_the_cure_comes_to_the_figure_printed_beside_it(String lot) {
    String text = Pdfs.text(records.resolve(lot + ".pdf"));
    List<MatchResult> sums = WORKED.matcher(text).results().toList();
    assertEquals(lot.equals("26043-L1") ? 2 : 3, sums.size(), text);
    assertEquals(text.split("× 1,000,000", -1).length - 1, sums.size(), "a sum was passed over");
    for (MatchResult sum : sums) {
      BigDecimal printed = new BigDecimal(sum.group(2));
      BigDecimal worked = PocketCalculator.work(sum.group(1));
      BigDecimal shown = sum.group(3).equals("%") ? worked.movePointRight(2) : worked;
      assertEquals(0, rounded(shown).compareTo(printed), sum.group() + " comes to " + worked);
    }
  }

  /** What nobody read in the rule set's own text stands in every record. */
  @ParameterizedTest
  @FieldSource("LOTS")
  void every_record_says_what_of_its_rule_set_was_not_read(String lot) throws IOException {
    String text = running(lot);
    JsonNode notRead =
        new ObjectMapper().readTree(Path.of("templates/limits/us.json").toFile()).get("notRead");
    assertEquals(7, notRead.size(), notRead.toString());
    for (JsonNode sentence : notRead) {
      assertTrue(text.contains(sentence.asText()), sentence + " in " + text);
    }
  }

  /** The levels are those of the limits: another limit, another column. */
  @ParameterizedTest
  @CsvSource({
    "'\"atMost\": \"41 °F\"',    '\"atMost\": \"40.5 °F\"',    Above 40.5 °F, 0",
    "'\"covers\": \"cold holding\"', '\"covers\": \"finish\"', "
        + "The product has no limit of cold holding that gives a temperature, 1",
    "'\"covers\": \"come-up\"',  '\"covers\": \"finish\"',     "
        + "The product has no limit of come-up that gives a temperature, 1"
  })
  void the_time_in_the_warm_follows_the_limits_of_the_plan(
      String old, String now, String told, int status, @TempDir Path own) {
    Path book = Tree.example(own);
    Tree.edit(book.resolve("plan.json"), old, now);
    Ran.of("close", book.resolve(Tree.DAY), "--out", own.resolve("out")).expect(status);
    List<Path> prints =
        Tree.walk(own.resolve("out")).stream()
            .filter(file -> file.getFileName().toString().matches("26.*\\.pdf"))
            .toList();
    assertEquals(1, prints.size());
    String text = Pdfs.text(prints.get(0)).replaceAll("\\s+", " ");
    assertTrue(text.contains(told), text);
  }

  /** Shares are printed with three decimals, and without the zeros at their end. */
  private static BigDecimal rounded(BigDecimal worked) {
    return worked.setScale(3, RoundingMode.HALF_UP);
  }

  @ParameterizedTest
  @CsvSource({
    "'11.5 g × 6.25 % / 4812 g × 1,000,000',                 149.366",
    "'17.2 g × 6.25 % / (5400 g − 540 g rind) × 1,000,000',  221.193",
    "(2 g × 5 % + 1 g × 10 %) / 1000 g × 100,                0.02",
    "5400 g × (1 − 10 % rind),                               4860",
    "8 − 2 − 1 × 3 / 2,                                      4.5"
  })
  void the_pocket_calculator_reckons_as_on_paper(String sum, BigDecimal result) {
    assertEquals(0, rounded(PocketCalculator.work(sum)).compareTo(result), sum);
  }

  @ParameterizedTest
  @CsvSource({"(1 + 2", "1 +", "1 2", "''"})
  void the_pocket_calculator_refuses_what_is_no_sum(String sum) {
    assertThrows(IllegalArgumentException.class, () -> PocketCalculator.work(sum));
  }
}

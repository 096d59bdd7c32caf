package org.flitchbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.flitchbook.Wording;
import org.flitchbook.words.Words;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said on the terminal of a book whose plan speaks Spanish. */
final class SpanishTerminalTest {

  private static final Words SPANISH = Wording.of("es");

  @TempDir private static Path shared;
  private static Smokeyard yard;
  private static Ran closed;
  private static Ran signed;

  @TempDir private Path folder;

  @BeforeAll
  static void sign() {
    yard = Smokeyard.withoutKeys(shared);
    Tree.edit(
        yard.book.resolve("plan.json"),
        "\"establishment\": {",
        "\"establishment\": {\"language\": \"es\",");
    Path apart = shared.resolve("apart");
    Path book = Tree.copy(yard.book, apart.resolve("book"));
    Object[] file = {"--keys", apart.resolve("keys"), "--passphrase-file", yard.passphrase};
    Ran made = Ran.of(join(file, "key", "new", "--for", "MA", "--book", book)).expect(0);
    says(made, "Se creó una clave de Maud Achterberg (MA).", "    huella       ");
    yard.key("MA");
    yard.key("OR");
    closed = Ran.of("close", yard.book.resolve(Tree.DAY)).expect(0);
    signed = yard.sign("MA").expect(0);
    yard.sign("OR").expect(0);
  }

  private static Object[] join(Object[] last, Object... first) {
    return Stream.of(first, last).flatMap(Stream::of).toArray();
  }

  private static void says(Ran ran, String... texts) {
    for (String text : texts) {
      assertTrue((ran.out() + ran.err()).contains(text), () -> text + " is not in\n" + ran);
    }
  }

  @Test
  void a_close_says_what_was_written() {
    says(
        closed,
        "Se ha escrito:\n    " + yard.record,
        "y junto a ellos lo mismo en JSON, y bundle.zip con toda la evidencia\n",
        "La última línea del libro mayor es ahora la 1, con el hash ");
    Ran again = Ran.of("close", yard.book.resolve(Tree.DAY)).expect(0);
    says(again, "Nada nuevo: " + yard.record.getParent() + " contiene estos mismos registros.\n");
  }

  @Test
  void a_close_of_a_changed_day_asks_why() {
    Path book = Tree.copy(yard.book, folder.resolve("book"));
    Tree.edit(book.resolve(Tree.DAY).resolve("chill.csv"), "4222", "4223");
    Ran refused = Ran.of("close", book.resolve(Tree.DAY)).expect(2);
    says(
        refused,
        "flitchbook: este día se cerró como r1, y desde entonces:\n",
        "\nIndique el motivo con --reason \"…\"");
  }

  @Test
  void a_signature_is_told_with_role_and_line() {
    says(
        signed,
        yard.record + " queda firmado.\n",
        "    Maud Achterberg como elaborador, ",
        "La última línea del libro mayor es ahora la 2, con el hash ");
    assertEquals(
        "flitchbook: en este registro no queda ninguna casilla de firma abierta para OR\n",
        yard.sign("OR").expect(2).err());
    assertEquals(
        "flitchbook: «ZZ» no figura entre las personas del plan, que son OR, MA, IQ\n",
        yard.sign("ZZ").expect(2).err());
  }

  @Test
  void a_record_is_proved_in_the_language_of_the_plan_that_it_carries() {
    Path away = yard.takenAway(folder);
    Ran proved = Ran.of("prove", away).expect(0);
    says(
        new Ran(0, proved.flat(), ""),
        "Ningún indicio de modificación.",
        "✓ Firmado en «prepared» por Maud Achterberg como elaborador, ",
        "✓ Los 22 archivos que lleva son los que figuran en sus páginas con su SHA-256.",
        "✓ Juzgado de nuevo a partir de lo que lleva, los 13 resultados son los mismos.",
        "– El firmante no está confirmado: la clave ",
        "– Ninguna firma prueba que lo anotado sea cierto");
    assertSpanish(Ran.of("prove", away, "--json").expect(0).json(), 11);
  }

  @Test
  void a_book_is_proved_in_the_language_of_its_plan() {
    Ran proved = Ran.of("prove", yard.book).expect(0);
    says(
        new Ran(0, proved.flat(), ""),
        "✓ ledger.jsonl: Las 3 líneas del libro mayor están encadenadas, hasta el hash ",
        "✓ records: Los 7 archivos de los registros son como constan en el libro mayor.",
        "✓ Lo anotado está como estaba cuando se cerraron los días.");
    assertSpanish(Ran.of("prove", yard.book, "--json").expect(0).json(), 12);
  }

  @Test
  void what_was_done_to_a_book_is_told_in_spanish() {
    Path book = Tree.copy(yard.book, folder.resolve("book"));
    Tree.edit(book.resolve("ledger.jsonl"), "\"by\":\"MA\"", "\"by\":\"MB\"");
    Tree.edit(book.resolve("2026-02-16/cure.csv"), "11.5", "11.6");
    Tree.write(
        book.resolve(Smokeyard.RECORD),
        () -> Files.writeString(book.resolve(Smokeyard.RECORD), "x"));
    Ran broken = Ran.of("prove", book).expect(1);
    says(
        new Ran(1, broken.flat(), ""),
        "NO ESTÁ COMO ESTABA.",
        "✗ ledger.jsonl: El libro mayor está roto: ledger.jsonl:2:hash: hallado ",
        ": No es el que consta en la línea 3 del libro mayor.",
        ": No se puede leer como PDF.",
        "✗ 2026-02-16/cure.csv: Se modificó después de la línea 1 del libro mayor, sin ningún"
            + " cierre.");
    assertSpanish(Ran.of("prove", book, "--json").expect(1).json(), 11);
  }

  /** Each statement has an id of which there is a Spanish text, and nothing of it is English. */
  private static void assertSpanish(JsonNode proof, int statements) {
    List<String> english = new ArrayList<>();
    for (JsonNode each : proof.get("statements")) {
      String id = each.get("id").asText();
      String spanish = SPANISH.texts().getOrDefault(id, "");
      String begin = spanish.split("\\{", -1)[0];
      if (spanish.isEmpty() || !each.get("text").asText().startsWith(begin)) {
        english.add(each.toString());
      }
    }
    assertEquals(List.of(), english);
    assertEquals(statements, proof.get("statements").size());
  }

  @Test
  void a_plan_and_a_code_are_answered_in_spanish() {
    says(
        Ran.of("plan", "check", yard.book).expect(0),
        "La versión 3 del plan puede utilizarse.\n",
        ": 11 límites\n");
    assertEquals(
        "flitchbook: «nothing» no es ningún lote, ningún lote de ingrediente o de proveedor,"
            + " ningún instrumento ni ningún cliente de "
            + yard.book.getFileName()
            + "\n",
        Ran.of("trace", "nothing", "--book", yard.book).expect(2).err());
  }

  @Test
  void a_passphrase_is_refused_in_spanish() {
    Ran refused =
        Ran.of("sign", yard.record, "--as", "MA", "--role", "maker", "--keys", yard.keys).expect(2);
    assertEquals("flitchbook: ya están firmadas todas las casillas de elaborador\n", refused.err());
    Ran nobody =
        Ran.of("key", "new", "--for", "IQ", "--book", yard.book, "--keys", yard.keys).expect(2);
    assertEquals(
        "flitchbook: no hay terminal en el que pedir la frase de contraseña; utilice"
            + " --passphrase-file o --passphrase-env\n",
        nobody.err());
  }
}

package org.flitchbook.sign;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.flitchbook.OutsideProgram.ask;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.flitchbook.OutsideProgram;
import org.flitchbook.SeededRun;
import org.flitchbook.sign.Signing.KeyAlgorithm;
import org.flitchbook.sign.Signing.KeyHolder;
import org.flitchbook.sign.Signing.OpenedKey;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Keys, signatures and time stamps; openssl is asked for a second opinion. */
final class SigningTest {

  private static final String PASSPHRASE = "smoke over the fen";
  private static final Instant FROM = Instant.parse("2026-02-24T18:30:12.5Z");
  private static final KeyHolder MAUD =
      new KeyHolder("MA", "Maud Achterberg", "Wrenfold Smokeyard");
  private static final byte[] RECORD = "26047-B1, met".getBytes(UTF_8);

  private static final long SEED = 20260224;
  private static final int BITS = SeededRun.cases("Flipped bits of a signature", SEED, 1_000);

  private static final byte[] FILE = Signing.close(newKey(), PASSPHRASE.toCharArray());
  private static final SigningKey KEY = open(FILE);
  private static final byte[] SIGNATURE = Signing.sign(RECORD, KEY);

  @TempDir private Path folder;

  private static SigningKey newKey() {
    return Signing.newKey(MAUD, KeyAlgorithm.EC_P256, FROM);
  }

  private static SigningKey open(byte[] file) {
    return Signing.open(file, PASSPHRASE.toCharArray()).key().orElseThrow();
  }

  private Path write(String name, byte[] bytes) throws Exception {
    return Files.write(folder.resolve(name), bytes);
  }

  @Test
  void a_key_says_whose_it_is_and_how_long_it_holds() {
    CertificateInfo info = KEY.info();
    assertAll(
        () -> assertEquals("Maud Achterberg", info.name()),
        () -> assertEquals("EC, 256 bits", info.algorithm()),
        () -> assertEquals(Instant.parse("2026-02-24T18:30:12Z"), info.from()),
        () -> assertEquals(Instant.parse("2036-02-24T18:30:12Z"), info.until()),
        () -> assertTrue(info.fingerprint().matches("[0-9a-f]{64}"), info.fingerprint()),
        () -> assertEquals("the key " + info.fingerprint(), KEY.toString()));
  }

  @Test
  void another_passphrase_opens_nothing() {
    OpenedKey opened = Signing.open(FILE, "smoke over the fern".toCharArray());
    assertEquals("the passphrase does not open it", opened.why().orElseThrow().toString());
    assertTrue(opened.key().isEmpty());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "no key", "0\u0082"})
  void what_is_no_key_file_is_told(String bytes) {
    OpenedKey opened = Signing.open(bytes.getBytes(UTF_8), PASSPHRASE.toCharArray());
    assertEquals("it is no key file (PKCS#12)", opened.why().orElseThrow().toString());
  }

  @Test
  void a_key_file_of_today_has_600_000_rounds_throughout_and_needs_no_hint() throws Exception {
    Path openssl = OutsideProgram.find("openssl");
    Path file = write("MA.p12", FILE);
    Process asked =
        new ProcessBuilder(
                openssl.toString(),
                "pkcs12",
                "-info",
                "-noout",
                "-passin",
                "pass:" + PASSPHRASE,
                "-in",
                file.toString())
            .redirectErrorStream(true)
            .start();
    String said = new String(asked.getInputStream().readAllBytes(), UTF_8);
    List<String> rounds =
        Pattern.compile("[Ii]teration:? (\\d+)")
            .matcher(said)
            .results()
            .map(r -> r.group(1))
            .toList();
    assertEquals(List.of("600000", "600000", "600000"), rounds, said);
    assertEquals(Optional.empty(), Signing.hint(FILE));
  }

  @Test
  void a_key_file_of_fewer_rounds_opens_with_a_hint() {
    byte[] older = Seals.quick(KEY, PASSPHRASE);
    assertEquals(KEY.info(), open(older).info());
    assertEquals(
        "it is closed with 10 rounds, and new keys with 600000, which hold a thief up longer; key"
            + " retire and key new give you such a key",
        Signing.hint(older).orElseThrow().toString());
    assertEquals(Optional.empty(), Signing.hint(new byte[0]));
    assertEquals(Optional.empty(), Signing.hint(new byte[] {0x30, 0}));
  }

  @Test
  void a_short_passphrase_closes_no_file() {
    char[] nine = "123456789".toCharArray();
    assertThrows(IllegalArgumentException.class, () -> Signing.close(KEY, nine));
  }

  /** The same of a key with RSA is proved where people make one, as making it takes long. */
  @Test
  void openssl_opens_the_key_file_and_verifies_what_the_key_signs() throws Exception {
    Path key = write("MA.p12", FILE);
    Path certificate = folder.resolve("MA.pem");
    Path word = write("word", PASSPHRASE.getBytes(UTF_8));
    ask("openssl", "pkcs12", "-in", key, "-nokeys", "-passin", "file:" + word, "-out", certificate);
    Path signature = write("signature", Signing.sign(RECORD, KEY));
    Path content = write("record", RECORD);
    OutsideProgram.verifyCades(signature, content, certificate, folder);
  }

  @Test
  void openssl_reads_the_same_of_the_certificate() throws Exception {
    byte[] text = Signing.certificate(KEY).getBytes(UTF_8);
    assertEquals(Optional.of(KEY.info()), Signing.info(text));
    assertEquals(Optional.empty(), Signing.info(RECORD));
    Path certificate = write("MA.pem", text);
    String said =
        ask(
            "openssl",
            "x509",
            "-in",
            certificate,
            "-noout",
            "-text",
            "-fingerprint",
            "-sha256",
            "-nameopt",
            "RFC2253");
    String print = KEY.info().fingerprint();
    for (String told :
        List.of(
            "CN=Maud Achterberg,O=Wrenfold Smokeyard",
            "X509v3 Key Usage: critical\n                Digital Signature, Non Repudiation",
            "CA:FALSE",
            "ASN1 OID: prime256v1")) {
      assertTrue(said.contains(told), told + said);
    }
    assertTrue(
        said.lines()
            .anyMatch(
                line -> line.replace(":", "").equalsIgnoreCase("sha256 Fingerprint=" + print)),
        said);
  }

  @Test
  void a_signature_is_valid_and_names_its_key() {
    Verification verification = Signing.verify(SIGNATURE, RECORD);
    assertEquals(List.of(), verification.faults());
    assertEquals(KEY.info(), verification.signer().orElseThrow());
    assertTrue(verification.timestamp().isEmpty());
  }

  @Test
  void a_signature_of_something_else_says_that_the_bytes_were_changed() {
    Verification verification = Signing.verify(SIGNATURE, "26047-B1, not met".getBytes(UTF_8));
    assertTrue(
        verification.faults().toString().contains("the bytes that it covers were changed"),
        verification.toString());
  }

  @Test
  void the_same_name_on_another_key_has_another_fingerprint() {
    byte[] other = Signing.sign(RECORD, newKey());
    CertificateInfo info = Signing.verify(other, RECORD).signer().orElseThrow();
    assertEquals(KEY.info().name(), info.name());
    assertFalse(KEY.info().fingerprint().equals(info.fingerprint()));
  }

  @Test
  void bits_of_a_signature_cannot_be_changed_unnoticed() {
    assertEquals(List.of(), unnoticed(SIGNATURE));
  }

  @Test
  void bytes_behind_a_signature_are_noticed() {
    assertFalse(Signing.verify(Arrays.copyOf(SIGNATURE, SIGNATURE.length + 1), RECORD).isValid());
  }

  /** Out of the bits that are tried those whose change leaves the signature valid. */
  private static List<Integer> unnoticed(byte[] signature) {
    return new Random(SEED)
        .ints(BITS, 0, signature.length * 8)
        .filter(bit -> Signing.verify(flipped(signature, bit), RECORD).isValid())
        .boxed()
        .toList();
  }

  private static byte[] flipped(byte[] bytes, int bit) {
    byte[] flipped = bytes.clone();
    flipped[bit / 8] ^= (byte) (1 << (bit % 8));
    return flipped;
  }

  private static byte[] stamped(StampServer server) throws Exception {
    return Signing.stamped(SIGNATURE, server.answer(Signing.stampRequest(SIGNATURE)));
  }

  @Test
  void a_time_stamp_tells_its_time_and_its_server() throws Exception {
    Instant time = Instant.parse("2026-02-24T19:00:00Z");
    Verification verification = Signing.verify(stamped(new StampServer(time)), RECORD);
    assertEquals(List.of(), verification.faults());
    assertEquals(time, verification.timestamp().orElseThrow().time());
    assertEquals("Harrow Fen time stamps", verification.timestamp().orElseThrow().server().name());
  }

  @Test
  void bits_of_a_stamped_signature_cannot_be_changed_unnoticed() throws Exception {
    byte[] stamped = stamped(new StampServer(FROM));
    assertEquals(List.of(), unnoticed(stamped));
  }

  @Test
  void a_stamp_of_another_signature_is_refused() throws Exception {
    byte[] other = Signing.sign(RECORD, KEY);
    byte[] answer = new StampServer(FROM).answer(Signing.stampRequest(other));
    assertThrows(TimestampException.class, () -> Signing.stamped(SIGNATURE, answer));
    assertThrows(TimestampException.class, () -> Signing.stamped(SIGNATURE, RECORD));
  }
}

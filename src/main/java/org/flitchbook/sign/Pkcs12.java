package org.flitchbook.sign;

import static org.flitchbook.message.Message.say;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.CharBuffer;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.Security;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.flitchbook.message.Message;

/** PKCS#12 files with one key in each. */
final class Pkcs12 {

  /**
   * Rounds of the derivation from the passphrase. Java's own 10,000 are soon tried through by a
   * thief of the file; these take half a second each time.
   */
  private static final String ROUNDS = "100000";

  private static final int SHORTEST = 10;
  private static final String ALIAS = "flitchbook";

  private static final List<String> ROUND_SETTINGS =
      List.of(
          "keystore.pkcs12.keyPbeIterationCount",
          "keystore.pkcs12.certPbeIterationCount",
          "keystore.pkcs12.macIterationCount");

  private Pkcs12() {}

  static Optional<Message> refusal(char[] passphrase) {
    if (CharBuffer.wrap(passphrase).chars().anyMatch(letter -> letter < ' ' || letter > '~')) {
      return Optional.of(
          say(
              "sign.passphrase.letters",
              "a passphrase has letters without accents, digits, signs and spaces only"));
    }
    return passphrase.length < SHORTEST
        ? Optional.of(
            say(
                "sign.passphrase.short",
                "a passphrase has at least {0} characters; a few words that you know do well",
                SHORTEST))
        : Optional.empty();
  }

  static byte[] close(SigningKey key, char[] passphrase) {
    ROUND_SETTINGS.forEach(name -> Security.setProperty(name, ROUNDS));
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, null);
      Certificate[] chain = {key.certificate()};
      store.setKeyEntry(ALIAS, key.secret(), passphrase, chain);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      store.store(bytes, passphrase);
      return bytes.toByteArray();
    } catch (GeneralSecurityException | IOException missing) {
      throw new IllegalStateException("this Java can't write a key file", missing);
    }
  }

  static Signing.OpenedKey open(byte[] file, char[] passphrase) {
    try {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(new ByteArrayInputStream(file), passphrase);
      return only(store, passphrase);
    } catch (IOException | GeneralSecurityException refused) {
      boolean wrong =
          refused instanceof UnrecoverableKeyException
              || refused.getCause() instanceof UnrecoverableKeyException;
      return refused(
          wrong
              ? say("sign.passphrase.wrong", "the passphrase does not open it")
              : say("sign.no-key-file", "it is no key file (PKCS#12)"));
    }
  }

  private static Signing.OpenedKey refused(Message why) {
    return new Signing.OpenedKey(Optional.empty(), Optional.of(why));
  }

  private static Signing.OpenedKey only(KeyStore store, char[] passphrase)
      throws GeneralSecurityException {
    List<String> aliases = Collections.list(store.aliases());
    return aliases.size() == 1
            && store.getKey(aliases.get(0), passphrase) instanceof PrivateKey secret
            && store.getCertificate(aliases.get(0)) instanceof X509Certificate certificate
        ? new Signing.OpenedKey(Optional.of(new SigningKey(secret, certificate)), Optional.empty())
        : refused(say("sign.not-one-key", "it does not hold just one key with its certificate"));
  }
}

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
import java.security.spec.AlgorithmParameterSpec;
import java.security.spec.ECGenParameterSpec;
import java.security.spec.RSAKeyGenParameterSpec;
import java.time.Instant;
import java.util.Base64;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.pkcs.Pfx;
import org.flitchbook.message.Message;

/** Keys, signatures and time stamps, all over bytes in memory. */
public final class Signing {

  /**
   * Rounds of the derivation from the passphrase. Java's own 10,000 are soon tried through by a
   * thief of the file; these take a second or two each time.
   */
  private static final int ROUNDS = 600_000;

  private static final int SHORTEST = 10;
  private static final String ALIAS = "flitchbook";

  /** Of the text of a certificate (RFC 7468, 2). */
  private static final int COLUMNS = 64;

  private static final List<String> ROUND_SETTINGS =
      List.of(
          "keystore.pkcs12.keyPbeIterationCount",
          "keystore.pkcs12.certPbeIterationCount",
          "keystore.pkcs12.macIterationCount");

  private Signing() {}

  /** Whose key it is, as its certificate says; none is blank. */
  public record KeyHolder(String initials, String name, String establishment) {
    public KeyHolder {
      if (initials.isBlank() || name.isBlank() || establishment.isBlank()) {
        throw new IllegalArgumentException("a key's holder has initials, a name and a house");
      }
    }
  }

  /** What a new key is made of. */
  public enum KeyAlgorithm {
    /** Elliptic curve P-256 (FIPS 186-5): short and quick. */
    EC_P256("EC", new ECGenParameterSpec("secp256r1")),
    /** RSA with 3,072 bits, for readers that know nothing newer. */
    RSA_3072("RSA", new RSAKeyGenParameterSpec(3072, RSAKeyGenParameterSpec.F4));

    final String family;
    final AlgorithmParameterSpec form;

    KeyAlgorithm(String family, AlgorithmParameterSpec form) {
      this.family = family;
      this.form = form;
    }
  }

  /**
   * What came of opening a key file.
   *
   * @param why there is no key; empty where there is one
   */
  public record OpenedKey(Optional<SigningKey> key, Optional<Message> why) {}

  /**
   * Makes a key with a certificate signed by itself, good for ten years.
   *
   * @param from the moment from which it holds
   */
  public static SigningKey newKey(KeyHolder holder, KeyAlgorithm algorithm, Instant from) {
    return Certificates.make(holder, algorithm, from);
  }

  /**
   * Why a passphrase can't close a key; empty where it can. It has at least 10 characters, since a
   * stolen key file can be tried as often as one likes, and they are ASCII, since programs differ
   * in how they take others.
   */
  public static Optional<Message> refusal(char[] passphrase) {
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

  /**
   * The key as a PKCS#12 file (RFC 7292), closed with a passphrase.
   *
   * @param passphrase one that {@link #refusal} says nothing of
   */
  public static byte[] close(SigningKey key, char[] passphrase) {
    refusal(passphrase)
        .ifPresent(
            why -> {
              throw new IllegalArgumentException(why.toString());
            });
    ROUND_SETTINGS.forEach(name -> Security.setProperty(name, String.valueOf(ROUNDS)));
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

  /** Opens a key file; a wrong passphrase and a file that is none give a reason. */
  public static OpenedKey open(byte[] file, char[] passphrase) {
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

  /**
   * What its holder should know of a key file that opens: an earlier version closed it with fewer
   * rounds. Empty for one of today, and for what is no key file.
   */
  public static Optional<Message> hint(byte[] file) {
    return rounds(file)
        .filter(rounds -> rounds < ROUNDS)
        .map(
            rounds ->
                say(
                    "sign.rounds",
                    "it is closed with {0} rounds, and new keys with {1}, which hold a thief up"
                        + " longer; key retire and key new give you such a key",
                    rounds,
                    ROUNDS));
  }

  private static Optional<Integer> rounds(byte[] file) {
    try {
      return Optional.ofNullable(Pfx.getInstance(file).getMacData())
          .map(mac -> mac.getIterationCount().intValue());
    } catch (IllegalArgumentException | IllegalStateException noKeyFile) {
      return Optional.empty();
    }
  }

  private static OpenedKey refused(Message why) {
    return new OpenedKey(Optional.empty(), Optional.of(why));
  }

  private static OpenedKey only(KeyStore store, char[] passphrase) throws GeneralSecurityException {
    List<String> aliases = Collections.list(store.aliases());
    return aliases.size() == 1
            && store.getKey(aliases.get(0), passphrase) instanceof PrivateKey secret
            && store.getCertificate(aliases.get(0)) instanceof X509Certificate certificate
        ? new OpenedKey(Optional.of(new SigningKey(secret, certificate)), Optional.empty())
        : refused(say("sign.not-one-key", "it does not hold just one key with its certificate"));
  }

  /** The certificate alone, to be handed out, as text (RFC 7468). */
  public static String certificate(SigningKey key) {
    byte[] end = {'\n'};
    return "-----BEGIN CERTIFICATE-----\n"
        + Base64.getMimeEncoder(COLUMNS, end)
            .encodeToString(Certificates.encoded(key.certificate()))
        + "\n-----END CERTIFICATE-----\n";
  }

  /** What a certificate says, as text or in DER; empty for what is none. */
  public static Optional<CertificateInfo> info(byte[] certificate) {
    return Certificates.read(certificate);
  }

  /**
   * Signs content that stays outside of the signature: CMS (RFC 5652) in DER, as PAdES baseline B
   * wants it (ETSI EN 319 142-1): content type, message digest and signing-certificate-v2 are
   * signed, and no time, which the PDF states.
   */
  public static byte[] sign(byte[] content, SigningKey key) {
    return CadesSignature.sign(content, key);
  }

  /**
   * Says what a signature shows of content. Beyond the mathematics it demands the form in which
   * {@link #sign} writes, byte by byte, so that no bit of a signature can be changed unnoticed.
   */
  public static Verification verify(byte[] signature, byte[] content) {
    return CadesSignature.verify(signature, content);
  }

  /** The question to a time stamp server about a signature (RFC 3161). */
  public static byte[] stampRequest(byte[] signature) {
    return Timestamps.request(signature);
  }

  /**
   * The signature with a server's answer in it.
   *
   * @throws TimestampException where the answer is a refusal or about something else
   */
  public static byte[] stamped(byte[] signature, byte[] answer) throws TimestampException {
    return Timestamps.add(signature, answer);
  }
}

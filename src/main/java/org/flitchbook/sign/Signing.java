package org.flitchbook.sign;

import java.time.Instant;

/** Keys, signatures and time stamps, all over bytes in memory. */
public final class Signing {

  /** Fewest characters of a passphrase: a stolen key file can be tried as often as one likes. */
  public static final int SHORTEST_PASSPHRASE = 10;

  private Signing() {}

  /**
   * Makes a key with a certificate signed by itself, good for ten years.
   *
   * @param from the moment from which it holds
   * @param passphrase at least {@link #SHORTEST_PASSPHRASE} characters
   * @return a PKCS#12 file (RFC 7292), closed with the passphrase
   */
  public static byte[] newKey(Holder holder, Algorithm algorithm, Instant from, char[] passphrase) {
    if (passphrase.length < SHORTEST_PASSPHRASE) {
      throw new IllegalArgumentException("the passphrase is too short");
    }
    return KeyFiles.close(
        Certificates.make(holder, algorithm, from), holder.initials(), passphrase);
  }

  /** Opens a key file; a wrong passphrase and a file that is none are told in words. */
  public static Opened open(byte[] file, char[] passphrase) {
    return KeyFiles.open(file, passphrase);
  }

  /**
   * Signs content that stays outside of the signature: CMS (RFC 5652) in DER, as PAdES baseline B
   * wants it (ETSI EN 319 142-1): content type, message digest and signing-certificate-v2 are
   * signed, and no time, which the PDF states.
   */
  public static byte[] sign(byte[] content, SigningKey key) {
    return Cades.sign(content, key);
  }

  /**
   * Says what a signature shows of content. Beyond the mathematics it demands the form in which
   * {@link #sign} writes, byte by byte, so that no bit of a signature can be changed unnoticed.
   */
  public static Seal verify(byte[] signature, byte[] content) {
    return CadesCheck.of(signature, content);
  }

  /** The question to a time stamp server about a signature (RFC 3161). */
  public static byte[] stampRequest(byte[] signature) {
    return Stamps.request(signature);
  }

  /**
   * The signature with a server's answer in it.
   *
   * @throws BrokenStamp where the answer is a refusal or about something else
   */
  public static byte[] stamped(byte[] signature, byte[] answer) throws BrokenStamp {
    return Stamps.add(signature, answer);
  }
}

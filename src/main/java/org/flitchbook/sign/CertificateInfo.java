package org.flitchbook.sign;

import java.time.Instant;

/**
 * What a certificate says of itself. Only its fingerprint, found again in a plan, confirms it.
 *
 * @param name the holder's, or the whole subject where it has no common name
 * @param fingerprint SHA-256 of the certificate, 64 digits of lower-case hexadecimal
 * @param algorithm in words, such as "EC, 256 bits"
 */
public record CertificateInfo(
    String name, String fingerprint, String algorithm, Instant from, Instant until) {

  public boolean isInForce(Instant at) {
    return !at.isBefore(from) && !at.isAfter(until);
  }
}

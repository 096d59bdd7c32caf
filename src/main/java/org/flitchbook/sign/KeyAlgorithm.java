package org.flitchbook.sign;

/** What a new key is made of. */
public enum KeyAlgorithm {
  /** Elliptic curve P-256 (FIPS 186-5): short and quick. */
  EC_P256("EC", 256),
  /** RSA with 3,072 bits, for readers that know nothing newer. */
  RSA_3072("RSA", 3072);

  final String family;
  final int bits;

  KeyAlgorithm(String family, int bits) {
    this.family = family;
    this.bits = bits;
  }
}

package org.flitchbook.sign;

import java.time.Instant;

/** A time stamp server's word that the signature was there at a time (RFC 3161). */
public record Timestamp(Instant time, CertificateInfo server) {}

package org.flitchbook.sign;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.math.BigInteger;
import java.nio.ByteBuffer;
import java.security.cert.CertificateException;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.bouncycastle.asn1.ASN1Encodable;
import org.bouncycastle.asn1.cms.ContentInfo;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.bouncycastle.tsp.TimeStampResponse;
import org.bouncycastle.tsp.TimeStampToken;

/** Asks for time stamps and reads them (RFC 3161). */
final class Timestamps {

  private static final int NONCE_OCTETS = 8;

  private Timestamps() {}

  static byte[] request(byte[] cms) {
    try {
      return question(CadesParts.of(cms).signature).getEncoded();
    } catch (IOException broken) {
      throw new IllegalArgumentException("this is no signature", broken);
    }
  }

  /** The nonce comes from the signature, which differs each time. */
  private static TimeStampRequest question(byte[] signature) throws IOException {
    byte[] hash = Certificates.sha256(signature);
    TimeStampRequestGenerator generator = new TimeStampRequestGenerator();
    generator.setCertReq(true);
    BigInteger nonce = new BigInteger(1, Arrays.copyOf(Certificates.sha256(hash), NONCE_OCTETS));
    return generator.generate(TSPAlgorithms.SHA256, hash, nonce);
  }

  static byte[] add(byte[] cms, byte[] answer) throws TimestampException {
    try {
      CadesParts parts = CadesParts.of(cms);
      TimeStampResponse response = new TimeStampResponse(answer);
      response.validate(question(parts.signature));
      TimeStampToken token = response.getTimeStampToken();
      if (token == null) {
        throw new TimestampException(
            say(
                "sign.timestamp.refused",
                "the server refuses: {0}",
                String.valueOf(response.getStatusString())));
      }
      ASN1Encodable stamp =
          TimestampForm.of(token.toCMSSignedData().toASN1Structure(), server(token));
      read(stamp, parts.signature);
      return new CadesEncoding(parts.certificate, parts.digest)
          .with(parts.signature, Optional.of(stamp));
    } catch (IOException | TSPException broken) {
      throw new TimestampException(
          say("sign.timestamp.none", "the answer is no time stamp of this signature"), broken);
    }
  }

  /** A server's answer, of which it is known that the server made it. */
  private record Answer(
      CertificateInfo server, Instant time, ByteBuffer imprint, boolean isInForm) {}

  static Timestamp read(ASN1Encodable token, byte[] signature) throws TimestampException {
    Answer answer = answer(token);
    if (!answer.imprint().equals(ByteBuffer.wrap(Certificates.sha256(signature)))) {
      throw new TimestampException(
          say("sign.timestamp.other", "its time stamp is about something else"));
    }
    if (!answer.isInForm()) {
      throw new TimestampException(
          say(
              "sign.timestamp.form",
              "its time stamp is not in the form in which this program keeps it"));
    }
    return new Timestamp(answer.time(), answer.server());
  }

  private static Answer answer(ASN1Encodable token) throws TimestampException {
    try {
      TimeStampToken stamp = new TimeStampToken(ContentInfo.getInstance(token));
      X509CertificateHolder server = server(stamp);
      stamp.validate(new JcaSimpleSignerInfoVerifierBuilder().build(server));
      return new Answer(
          Certificates.info(CadesParts.certificate(server.getEncoded())),
          stamp.getTimeStampInfo().getGenTime().toInstant(),
          ByteBuffer.wrap(stamp.getTimeStampInfo().getMessageImprintDigest()),
          TimestampForm.holds(token, server));
    } catch (IOException
        | TSPException
        | CertificateException
        | OperatorCreationException
        | RuntimeException broken) {
      // Bouncy Castle throws exceptions of many kinds at a broken structure.
      throw new TimestampException(
          say("sign.timestamp.broken", "its time stamp is broken"), broken);
    }
  }

  private static X509CertificateHolder server(TimeStampToken stamp) throws TimestampException {
    for (X509CertificateHolder each : stamp.getCertificates().getMatches(null)) {
      if (stamp.getSID().match(each)) {
        return each;
      }
    }
    throw new TimestampException(
        say("sign.timestamp.certificate", "its time stamp does not hold its server's certificate"));
  }
}

package org.flitchbook.sign;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.math.BigInteger;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.function.UnaryOperator;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.SignerInfoGenerator;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.DigestCalculator;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;
import org.bouncycastle.util.CollectionStore;

/** A time stamp server of the tests, whose clock stands still. */
public final class StampServer {

  private final Instant time;
  private final KeyPair keys;
  private final X509CertificateHolder certificate;

  /** Sets up a server that always tells one time. */
  public StampServer(Instant time) throws Exception {
    this.time = time;
    KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
    generator.initialize(256);
    keys = generator.generateKeyPair();
    X500Name name = new X500Name("CN=Harrow Fen time stamps");
    certificate =
        new JcaX509v3CertificateBuilder(
                name,
                BigInteger.TEN,
                Date.from(time.minus(Duration.ofDays(1))),
                Date.from(time.plus(Duration.ofDays(1))),
                name,
                keys.getPublic())
            .addExtension(
                Extension.extendedKeyUsage,
                true,
                new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping))
            .build(new JcaContentSignerBuilder("SHA256withECDSA").build(keys.getPrivate()));
  }

  /** The answer to a question of RFC 3161. */
  public byte[] answer(byte[] question) throws Exception {
    DigestCalculator digest =
        new JcaDigestCalculatorProviderBuilder()
            .build()
            .get(new org.bouncycastle.asn1.x509.AlgorithmIdentifier(TSPAlgorithms.SHA256));
    SignerInfoGenerator signer =
        new JcaSimpleSignerInfoGeneratorBuilder()
            .build("SHA256withECDSA", keys.getPrivate(), certificate);
    TimeStampTokenGenerator tokens =
        new TimeStampTokenGenerator(signer, digest, new ASN1ObjectIdentifier("1.2.3.4"));
    tokens.addCertificates(new CollectionStore<>(List.of(certificate)));
    return new TimeStampResponseGenerator(tokens, TSPAlgorithms.ALLOWED)
        .generate(new TimeStampRequest(question), BigInteger.ONE, Date.from(time))
        .getEncoded();
  }

  /** Listens on this machine's own address, each answer bent as told; the caller stops it. */
  public HttpServer listen(UnaryOperator<byte[]> bent) throws IOException {
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          try (exchange) {
            byte[] answer = bent.apply(answer(exchange.getRequestBody().readAllBytes()));
            exchange.getResponseHeaders().add("Content-Type", "application/timestamp-reply");
            exchange.sendResponseHeaders(200, answer.length);
            exchange.getResponseBody().write(answer);
          } catch (IOException refused) {
            throw refused;
          } catch (Exception broken) {
            throw new IOException(broken);
          }
        });
    server.start();
    return server;
  }
}

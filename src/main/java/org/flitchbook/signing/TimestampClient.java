package org.flitchbook.signing;

import static org.flitchbook.message.Message.say;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import org.flitchbook.job.UsageException;
import org.flitchbook.message.Message;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.TimestampException;

/** Asks a time stamp server (RFC 3161 over HTTP). */
record TimestampClient(String address) {

  private static final Duration PATIENCE = Duration.ofSeconds(15);
  private static final int LARGEST_ANSWER = 1 << 16;
  private static final int OK = 200;

  /**
   * The seal with a time stamp in it.
   *
   * @throws UsageException where none can be had
   */
  byte[] stamped(byte[] seal) {
    try {
      return Signing.stamped(seal, answer(Signing.stampRequest(seal)));
    } catch (TimestampException broken) {
      throw refused(broken.fault(), broken);
    } catch (IOException | IllegalArgumentException unreachable) {
      throw refused(say("signing.unreachable", "it can't be reached"), unreachable);
    } catch (InterruptedException asked) {
      Thread.currentThread().interrupt();
      throw refused(say("signing.interrupted", "interrupted while waiting"), asked);
    }
  }

  private byte[] answer(byte[] question)
      throws IOException, InterruptedException, TimestampException {
    HttpClient client = HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(address))
            .timeout(PATIENCE)
            .header("Content-Type", "application/timestamp-query")
            .POST(HttpRequest.BodyPublishers.ofByteArray(question))
            .build();
    HttpResponse<InputStream> response =
        client.send(request, HttpResponse.BodyHandlers.ofInputStream());
    try (InputStream body = response.body()) {
      if (response.statusCode() != OK) {
        throw new TimestampException(
            say("signing.status", "it answers with status {0}", response.statusCode()));
      }
      return body.readNBytes(LARGEST_ANSWER);
    }
  }

  private UsageException refused(Message why, Exception cause) {
    return new UsageException(
        cause,
        "signing.no-timestamp",
        "no time stamp from {0}: {1}. Nothing was signed; try again, or sign with"
            + " --without-timestamp",
        address,
        why);
  }
}

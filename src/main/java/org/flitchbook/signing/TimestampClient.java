package org.flitchbook.signing;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import org.flitchbook.job.UsageException;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.TimestampException;
import org.jspecify.annotations.Nullable;

/** Asks a time stamp server (RFC 3161 over HTTP). */
final class TimestampClient {

  private static final Duration PATIENCE = Duration.ofSeconds(15);
  private static final int LARGEST_ANSWER = 1 << 16;
  private static final int OK = 200;

  private final String address;

  TimestampClient(String address) {
    this.address = address;
  }

  /**
   * The seal with a time stamp in it.
   *
   * @throws UsageException where none can be had
   */
  byte[] stamped(byte[] seal) {
    try {
      return Signing.stamped(seal, answer(Signing.stampRequest(seal)));
    } catch (TimestampException broken) {
      throw refused(String.valueOf(broken.getMessage()), broken);
    } catch (IOException | IllegalArgumentException unreachable) {
      throw refused("it can't be reached", unreachable);
    } catch (InterruptedException asked) {
      Thread.currentThread().interrupt();
      throw refused("interrupted while waiting", asked);
    }
  }

  private byte[] answer(byte[] question) throws IOException, InterruptedException {
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
        throw refused("it answers with status " + response.statusCode(), null);
      }
      return body.readNBytes(LARGEST_ANSWER);
    }
  }

  private UsageException refused(String why, @Nullable Throwable cause) {
    String told =
        "no time stamp from "
            + address
            + ": "
            + why
            + ". Nothing was signed; try again, or sign with --without-timestamp";
    return cause == null ? new UsageException(told) : new UsageException(told, cause);
  }
}

package org.flitchbook.keys;

import static org.flitchbook.message.Message.say;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import org.flitchbook.disk.Disk;
import org.flitchbook.job.Session;
import org.flitchbook.job.UsageException;
import org.flitchbook.sign.CertificateInfo;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/**
 * A person's key on the disk: a key file for its holder alone, and a certificate to hand out.
 *
 * @param folder of the keys
 */
public record KeyFolder(Path folder, String initials) {

  /**
   * The key of a person.
   *
   * @throws UsageException where the initials can't be the name of a file
   */
  public KeyFolder {
    folder = folder.toAbsolutePath().normalize();
    if (!initials.matches("[\\p{L}\\p{N}_-]+")) {
      throw new UsageException("keys.no-name", "\"{0}\" can't be the name of a key file", initials);
    }
  }

  /** What is copied with the book is no secret. */
  void refuseInside(Path book) {
    if (folder.startsWith(book.toAbsolutePath().normalize())) {
      throw new UsageException(
          "keys.inside",
          "the folder of the keys, {0}, lies in the book; keys must not travel with it",
          folder);
    }
  }

  public Path key() {
    return folder.resolve(initials + ".p12");
  }

  /**
   * The key file as it lies there, still closed; the session notes what its holder should know.
   *
   * @throws UsageException where it can't be read
   */
  public byte[] closed(Session session) {
    byte[] file = Disk.read(key());
    noteOthers(session, key());
    Signing.hint(file).ifPresent(hint -> session.note(say("keys.hint", "{0}: {1}", key(), hint)));
    return file;
  }

  /** Notes where others than its owner may read a file that is his alone. */
  public static void noteOthers(Session session, Path secret) {
    if (Disk.reading(secret, () -> Disk.isOpenToOthers(secret))) {
      session.note(
          say(
              "keys.open-to-others",
              "{0} can be read or changed by others on this computer; chmod 600 keeps it to you",
              secret));
    }
  }

  Path certificate() {
    return folder.resolve(initials + ".pem");
  }

  void refuseSecond() {
    if (Files.exists(key())) {
      throw new UsageException(
          "keys.there-already",
          "{0} is there already; retire that key, or name another folder with --keys",
          key());
    }
  }

  void put(SigningKey key, byte[] closed) {
    byte[] certificate = Signing.certificate(key).getBytes(StandardCharsets.US_ASCII);
    Disk.writing(
        folder,
        () -> {
          Disk.makePrivateFolder(folder);
          Disk.writePrivate(key(), closed);
          Disk.replace(certificate(), certificate);
        });
  }

  /** What the certificate says; empty where there is none. */
  Optional<CertificateInfo> info() {
    return Files.exists(certificate()) ? Signing.info(Disk.read(certificate())) : Optional.empty();
  }

  /** Puts the files aside under the key's fingerprint, so that a new key can be made. */
  Optional<Path> putAside(String fingerprint) {
    Path aside = folder.resolve(initials + "-" + fingerprint.substring(0, 8) + "-retired.p12");
    boolean isMeant = info().filter(info -> info.fingerprint().equals(fingerprint)).isPresent();
    if (!isMeant || !Files.exists(key()) || Files.exists(aside)) {
      return Optional.empty();
    }
    Disk.writing(
        folder,
        () -> {
          Files.move(key(), aside, StandardCopyOption.ATOMIC_MOVE);
          Disk.force(folder);
        });
    return Optional.of(aside);
  }
}

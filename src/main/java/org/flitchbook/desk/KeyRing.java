package org.flitchbook.desk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import org.flitchbook.sign.Card;
import org.flitchbook.sign.Signing;
import org.flitchbook.sign.SigningKey;

/** A person's key on the disk: a key file for its holder alone, and a certificate to hand out. */
final class KeyRing {

  private final Path folder;
  private final String initials;

  /**
   * @throws Misuse where the initials can't be the name of a file
   */
  KeyRing(Path folder, String initials) {
    this.folder = folder.toAbsolutePath().normalize();
    this.initials = initials;
    if (!initials.matches("[\\p{L}\\p{N}_-]+")) {
      throw new Misuse("\"" + initials + "\" can't be the name of a key file");
    }
  }

  /** What is copied with the book is no secret. */
  void refuseInside(Path book) {
    if (folder.startsWith(book.toAbsolutePath().normalize())) {
      throw new Misuse(
          "the folder of the keys, " + folder + ", lies in the book; keys must not travel with it");
    }
  }

  Path key() {
    return folder.resolve(initials + ".p12");
  }

  Path certificate() {
    return folder.resolve(initials + ".pem");
  }

  void refuseSecond() {
    if (Files.exists(key())) {
      throw new Misuse(
          key() + " is there already; retire that key, or name another folder with --keys");
    }
  }

  void put(SigningKey key, byte[] closed) {
    try {
      Disk.makePrivateFolder(folder);
      Disk.writePrivate(key(), closed);
      byte[] certificate = Signing.certificate(key).getBytes(StandardCharsets.US_ASCII);
      Disk.replace(certificate(), certificate);
    } catch (IOException unwritable) {
      throw new Misuse("can't write to " + folder + ": " + Reason.of(unwritable), unwritable);
    }
  }

  byte[] read() {
    return read(key());
  }

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException unreadable) {
      throw new Misuse("can't read " + file + ": " + Reason.of(unreadable), unreadable);
    }
  }

  /** What the certificate says; empty where there is none. */
  Optional<Card> card() {
    return Files.exists(certificate()) ? Signing.card(read(certificate())) : Optional.empty();
  }

  /** Puts the files aside under the key's fingerprint, so that a new key can be made. */
  Optional<Path> putAside(String fingerprint) {
    Path aside = folder.resolve(initials + "-" + fingerprint.substring(0, 8) + "-retired.p12");
    boolean isMeant = card().filter(card -> card.fingerprint().equals(fingerprint)).isPresent();
    if (!isMeant || !Files.exists(key()) || Files.exists(aside)) {
      return Optional.empty();
    }
    try {
      Files.move(key(), aside, StandardCopyOption.ATOMIC_MOVE);
      Disk.force(folder);
      return Optional.of(aside);
    } catch (IOException refused) {
      throw new Misuse("can't put " + key() + " aside: " + Reason.of(refused), refused);
    }
  }
}

package org.flitchbook.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** A bundle taken apart by the platform's own ZIP reader and digest. */
final class Zipped {

  private static final String MANIFEST = "manifest.sha256";

  private Zipped() {}

  static Map<String, byte[]> read(Path file) throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    try (InputStream in = Files.newInputStream(file);
        ZipInputStream zip = new ZipInputStream(in, UTF_8)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (files.put(entry.getName(), zip.readAllBytes()) != null) {
          throw new AssertionError(entry.getName() + " is there twice");
        }
      }
    }
    return files;
  }

  /** The names and hashes that the manifest tells, in the form of {@code sha256sum}. */
  static Map<String, String> manifest(Map<String, byte[]> bundle) {
    Map<String, String> told = new TreeMap<>();
    for (String line : new String(bundle.get(MANIFEST), UTF_8).split("\n", -1)) {
      if (!line.isEmpty()) {
        told.put(line.substring(66), line.substring(0, 64));
      }
    }
    return told;
  }

  /** The names and hashes of what is there, the manifest itself left out. */
  static Map<String, String> hashes(Map<String, byte[]> bundle) throws NoSuchAlgorithmException {
    Map<String, String> hashes = new TreeMap<>();
    for (Map.Entry<String, byte[]> file : bundle.entrySet()) {
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(file.getValue());
      hashes.put(file.getKey(), HexFormat.of().formatHex(digest));
    }
    hashes.remove(MANIFEST);
    return hashes;
  }

  /** Writes a bundle with a manifest of what is in it now. */
  static void write(Path file, Map<String, byte[]> bundle)
      throws IOException, NoSuchAlgorithmException {
    Map<String, byte[]> files = new TreeMap<>(bundle);
    String manifest =
        hashes(files).entrySet().stream()
            .map(each -> each.getValue() + "  " + each.getKey() + "\n")
            .collect(Collectors.joining());
    files.put(MANIFEST, manifest.getBytes(UTF_8));
    pack(file, files);
  }

  /** Writes files as they are. */
  static void pack(Path file, Map<String, byte[]> files) throws IOException {
    try (OutputStream out = Files.newOutputStream(file);
        ZipOutputStream into = new ZipOutputStream(out, UTF_8)) {
      for (Map.Entry<String, byte[]> each : files.entrySet()) {
        into.putNextEntry(new ZipEntry(each.getKey()));
        into.write(each.getValue());
        into.closeEntry();
      }
    }
  }
}

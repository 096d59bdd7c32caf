package org.flitchbook.desk;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Says in words why the disk refused something. */
final class Reason {

  private Reason() {}

  static String of(IOException refused) {
    if (refused instanceof AccessDeniedException) {
      return "that is not permitted";
    }
    if (refused instanceof NoSuchFileException) {
      return "there is no such file or folder";
    }
    if (refused instanceof FileAlreadyExistsException) {
      return "something of that name is there already";
    }
    String told = refused instanceof FileSystemException file ? file.getReason() : null;
    String reason = told == null ? refused.getMessage() : told;
    return reason == null ? "the disk gives no reason" : reason;
  }
}

package meadcell.batch.command;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Objects;

/** What went wrong with a file, where, and what to do, as a sentence for its owner. */
public final class FileTrouble {
  private FileTrouble() {}

  /** A sentence in place of Java's class names and bare paths. */
  public static String sentence(IOException e) {
    if (e instanceof FileSystemException system && system.getFile() != null) {
      String path = Objects.requireNonNullElse(system.getOtherFile(), system.getFile());
      return sentence(system, Path.of(path));
    }
    if (e instanceof CharacterCodingException) {
      return "The file is no text in UTF-8; save it as such.";
    }
    return Objects.requireNonNullElse(e.getMessage(), "The file could not be read or written.");
  }

  private static String sentence(FileSystemException e, Path path) {
    if (Files.isDirectory(path)) {
      return path + " is a folder where a file is due; name a file.";
    }
    Path folder = path.toAbsolutePath().getParent();
    for (Path over = e instanceof FileAlreadyExistsException ? path : folder;
        over != null;
        over = over.getParent()) {
      if (Files.isRegularFile(over)) {
        return over + " is a file, not a folder; choose a folder.";
      }
    }
    if (e instanceof NoSuchFileException) {
      return Files.exists(folder)
          ? "There is no such file: " + path
          : "There is no such folder: " + folder;
    }
    boolean exists = Files.exists(path);
    if (e instanceof AccessDeniedException) {
      return exists
          ? "You have no permission for the file " + path + "; have it changed."
          : "You have no permission for the folder " + folder + "; choose another.";
    }
    // a temporary file's name would tell nobody anything
    return (exists ? path : folder) + ": " + e.getReason();
  }
}

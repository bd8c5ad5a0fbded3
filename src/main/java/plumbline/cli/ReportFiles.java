package plumbline.cli;

import static java.util.stream.Collectors.joining;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import plumbline.text.Wording;

/** The files that a command writes beside its text: each whole, or not at all. */
final class ReportFiles {
  private final List<Path> files;

  private ReportFiles(List<Path> files) {
    this.files = files;
  }

  /**
   * Takes the files asked for.
   *
   * @param endings the endings that the command has a form for, such as {@code .json}
   * @throws UnknownForm if a file ends in none of them
   */
  static ReportFiles of(List<Path> files, Collection<String> endings) throws UnknownForm {
    for (Path file : files) {
      if (endings.stream().noneMatch(file.toString()::endsWith)) {
        throw new UnknownForm(
            "--report "
                + Wording.quote(file.toString())
                + ": the ending chooses the form; expected one of "
                + endings.stream().map(Wording::quote).collect(joining(", ")));
      }
    }
    return new ReportFiles(List.copyOf(files));
  }

  /** A report file whose ending names no form. */
  static final class UnknownForm extends Exception {
    private static final long serialVersionUID = 1L;

    UnknownForm(String message) {
      super(message);
    }
  }

  /** The first of the files that is one of the inputs, which must not be lost. */
  Optional<Path> overwritten(Collection<Path> inputs) {
    return files.stream()
        .filter(Files::exists)
        .filter(file -> inputs.stream().anyMatch(input -> isSame(file, input)))
        .findFirst();
  }

  private static boolean isSame(Path one, Path other) {
    try {
      return Files.exists(other) && Files.isSameFile(one, other);
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * Writes all of them; one that cannot be written does not keep back the others.
   *
   * @param forms the content by ending; asked for at most once each
   * @return the status: done, or that a report could not be written
   */
  int write(Console console, Map<String, Supplier<String>> forms) {
    Map<String, String> contents = new TreeMap<>();
    int status = Status.DONE;
    for (Path file : files) {
      String ending =
          forms.keySet().stream().filter(file.toString()::endsWith).findFirst().orElseThrow();
      String content = contents.computeIfAbsent(ending, form -> forms.get(form).get());
      try {
        replace(file, content.getBytes(StandardCharsets.UTF_8));
      } catch (IOException e) {
        console.complain(file + ": report cannot be written: " + reason(e));
        status = Status.CANNOT_WRITE;
      }
    }
    return status;
  }

  /** A reader of the file sees the old report or the new one, never half of one. */
  private static void replace(Path file, byte[] content) throws IOException {
    Path target = Files.isSymbolicLink(file) && Files.exists(file) ? file.toRealPath() : file;
    if (Files.exists(target) && !Files.isRegularFile(target, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileSystemException(file.toString(), null, "not a regular file");
    }
    Path temporary =
        target.resolveSibling("." + target.getFileName() + "." + ProcessHandle.current().pid());
    try {
      // CREATE_NEW and no permissions of our own: the report gets those of the user's umask.
      try (OutputStream stream =
          Files.newOutputStream(
              temporary, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
        stream.write(content);
      }
      Files.move(
          temporary, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(temporary);
    }
  }

  private static String reason(IOException e) {
    if (e instanceof java.nio.file.NoSuchFileException) {
      return "its folder does not exist";
    }
    if (e instanceof java.nio.file.AccessDeniedException) {
      return "permission denied";
    }
    return e instanceof FileSystemException failure && failure.getReason() != null
        ? failure.getReason()
        : String.valueOf(e.getMessage());
  }
}

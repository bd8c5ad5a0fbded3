package plumbline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Writes files that must not be there yet. */
final class NewFile {
  private NewFile() {}

  /**
   * Writes a file: whole, or not at all.
   *
   * @throws java.nio.file.FileAlreadyExistsException where there is one of that name
   */
  static void write(Path file, String text) throws IOException {
    try (var stream =
        Files.newOutputStream(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      stream.write(text.getBytes(StandardCharsets.UTF_8));
    } catch (java.nio.file.FileAlreadyExistsException e) {
      throw e;
    } catch (IOException e) {
      Files.deleteIfExists(file);
      throw e;
    }
  }
}

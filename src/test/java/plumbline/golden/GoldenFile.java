package plumbline.golden;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Expected output kept in files under testdata; renewed only with {@code -Dgolden.renew=true}. */
public final class GoldenFile {
  private GoldenFile() {}

  /** Fails unless the text is what the file holds; renews the file instead where that is asked. */
  public static void check(String file, String actual) {
    Path path = Path.of("testdata").resolve(file);
    try {
      if (Boolean.getBoolean("golden.renew")) {
        Files.createDirectories(path.getParent());
        Files.writeString(path, actual);
        return;
      }
      assertThat(actual).as(path.toString()).isEqualTo(Files.readString(path));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

package plumbline.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;

/**
 * A stream that remembers its first failure and swallows everything after it: a reader that has
 * seen enough ends the output, not the run.
 */
final class Pipe extends OutputStream {
  private final OutputStream stream;
  private Optional<String> failure = Optional.empty();

  Pipe(OutputStream stream) {
    this.stream = stream;
  }

  @Override
  public void write(int octet) {
    write(new byte[] {(byte) octet}, 0, 1);
  }

  @Override
  public void write(byte[] octets, int from, int count) {
    attempt(() -> stream.write(octets, from, count));
  }

  @Override
  public void flush() {
    attempt(stream::flush);
  }

  private void attempt(Writing writing) {
    if (failure.isPresent()) {
      return;
    }
    try {
      writing.run();
    } catch (IOException e) {
      failure = Optional.of(String.valueOf(e.getMessage()));
    }
  }

  /** The system's words for the first failure. */
  Optional<String> failure() {
    return failure;
  }

  /** Whether the reader went away, which is no fault; the launcher fixes the message's language. */
  boolean isClosedByReader() {
    return failure
        .filter(words -> words.toLowerCase(Locale.ROOT).contains("broken pipe"))
        .isPresent();
  }

  @FunctionalInterface
  private interface Writing {
    void run() throws IOException;
  }
}

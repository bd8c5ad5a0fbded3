package plumbline.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * One run of the program as a user sees it.
 *
 * @param status exit status
 * @param out standard output
 * @param err standard error
 */
record Run(int status, String out, String err) {
  static Run of(String... args) {
    return with(InputStream.nullInputStream(), args);
  }

  static Run reading(String input, String... args) {
    return with(new ByteArrayInputStream(input.getBytes(StandardCharsets.UTF_8)), args);
  }

  private static Run with(InputStream in, String... args) {
    return from(in, false, args);
  }

  /** A run with the given standard input. */
  static Run from(InputStream in, boolean debug, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status = new Main(in, out, err, false, debug).run(args);
    return new Run(
        status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  /** A run whose standard output is the given stream. */
  static Run into(OutputStream out, String... args) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int status = new Main(InputStream.nullInputStream(), out, err, false, false).run(args);
    return new Run(status, "", err.toString(StandardCharsets.UTF_8));
  }
}

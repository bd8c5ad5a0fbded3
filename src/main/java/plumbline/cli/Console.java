package plumbline.cli;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import plumbline.text.Display;
import plumbline.text.Page;

/** The streams of one run of the program, and what they lead to. */
final class Console {
  private final InputStream in;
  private final Pipe pipe;
  private final PrintWriter out;
  private final PrintWriter err;
  private final boolean colourful;
  private final int columns;
  private final Progress progress;

  /** Takes the streams of a run whose progress nobody sees. */
  Console(InputStream in, OutputStream out, OutputStream err, boolean colourful) {
    this(in, out, err, colourful, Page.Look.USUAL, false, Progress.DELAY);
  }

  /**
   * Takes the streams.
   *
   * @param in standard input
   * @param out standard output
   * @param err standard error
   * @param colourful whether standard output is a terminal whose user wants colour
   * @param columns the width of what standard output leads to
   * @param watched whether standard error is a terminal whose user may want to see progress
   * @param delay how long a run shows no progress
   */
  Console(
      InputStream in,
      OutputStream out,
      OutputStream err,
      boolean colourful,
      int columns,
      boolean watched,
      Duration delay) {
    this.in = in;
    this.pipe = new Pipe(out);
    this.out = writer(pipe);
    this.err = writer(err);
    this.colourful = colourful;
    this.columns = columns;
    this.progress = new Progress(this.err, watched, System::nanoTime, delay);
  }

  private static PrintWriter writer(OutputStream stream) {
    return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8));
  }

  /** Standard input. */
  InputStream in() {
    return in;
  }

  /** Standard output, in UTF-8; failures are kept for {@link #close(int)}. */
  PrintWriter out() {
    return out;
  }

  /** Standard error, in UTF-8. */
  PrintWriter err() {
    return err;
  }

  /** Whether colour is wanted when the command line leaves it open. */
  boolean colourful() {
    return colourful;
  }

  /** How many columns a line of standard output should fill. */
  int columns() {
    return columns;
  }

  /** Where a long run tells how far it is. */
  Progress progress() {
    return progress;
  }

  /** Writes a diagnostic of one line; control characters of what it quotes are dropped. */
  void complain(String line) {
    progress.end();
    err.print(Display.clean(line) + "\n");
    err.flush();
  }

  /** Writes a diagnostic in the form of a program that names itself. */
  void complainAsProgram(String message) {
    complain("plumbline: " + message);
  }

  /**
   * Empties the streams.
   *
   * @param status the status so far
   * @return that, or a higher one where standard output could not be written
   */
  int close(int status) {
    out.flush();
    int highest = status;
    if (pipe.failure().isPresent() && !pipe.isClosedByReader()) {
      complainAsProgram("standard output cannot be written: " + pipe.failure().get());
      highest = Math.max(status, Status.CANNOT_WRITE);
    }
    err.flush();
    return highest;
  }
}

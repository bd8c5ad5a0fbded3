package plumbline.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.util.function.LongSupplier;
import plumbline.run.Watcher;

/**
 * Tells on a terminal how far a long run is: one line on standard error, rewritten in place and
 * wiped before anything else is written. A short run shows none.
 */
final class Progress implements Watcher {
  /** What takes no longer needs no line. */
  static final Duration DELAY = Duration.ofSeconds(2);

  private static final Duration INTERVAL = Duration.ofMillis(100);

  /** ECMA-48 8.3.41: the rest of the line is erased. */
  private static final String WIPE = "\r\u001b[K";

  private final PrintWriter err;
  private final boolean terminal;
  private final LongSupplier nanos;
  private long next;
  private int most;
  private boolean shown;

  /**
   * A run begins.
   *
   * @param err where the line is written
   * @param terminal whether that is a terminal whose user can see it
   * @param nanos the time in nanoseconds, from any beginning
   * @param delay how long a run shows nothing
   */
  Progress(PrintWriter err, boolean terminal, LongSupplier nanos, Duration delay) {
    this.err = err;
    this.terminal = terminal;
    this.nanos = nanos;
    this.next = nanos.getAsLong() + delay.toNanos();
  }

  @Override
  public synchronized void read(int done, int of) {
    if (done > most) {
      most = done;
      show("read " + done + " of " + of + (of == 1 ? " file" : " files"));
    }
  }

  @Override
  public synchronized void comparing(int configs) {
    show("comparing " + configs + (configs == 1 ? " config" : " configs") + " with the design");
  }

  @Override
  public synchronized void end() {
    if (shown) {
      err.print(WIPE);
      err.flush();
      shown = false;
    }
  }

  private void show(String words) {
    // differences of such times are compared, as they may overflow
    if (!terminal || nanos.getAsLong() - next < 0) {
      return;
    }
    next = nanos.getAsLong() + INTERVAL.toNanos();
    err.print(WIPE + "plumbline: " + words);
    err.flush();
    shown = true;
  }
}

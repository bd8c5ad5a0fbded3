package plumbline.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * One run of the distribution, as a process of its own.
 *
 * @param status exit status
 * @param out standard output
 * @param err standard error
 * @param peakKilobytes the most memory that was resident at any time, as the kernel counts it
 */
record Launched(int status, String out, String err, long peakKilobytes) {
  /** The launcher that the build leaves. */
  static final Path PROGRAM = Path.of("target/plumbline/bin/plumbline").toAbsolutePath();

  /** Runs a command in a folder and waits for its end. */
  static Launched in(Path folder, List<String> command) throws IOException, InterruptedException {
    Path out = Files.createTempFile("launched", ".out");
    Path err = Files.createTempFile("launched", ".err");
    try {
      Process process =
          new ProcessBuilder(command)
              .directory(folder.toFile())
              .redirectOutput(out.toFile())
              .redirectError(err.toFile())
              .start();
      process.getOutputStream().close();
      long peak = 0;
      while (!process.waitFor(20, TimeUnit.MILLISECONDS)) {
        peak = Math.max(peak, highWaterMark(process.pid()));
      }
      return new Launched(
          process.exitValue(),
          Files.readString(out, StandardCharsets.UTF_8),
          Files.readString(err, StandardCharsets.UTF_8),
          peak);
    } finally {
      Files.deleteIfExists(out);
      Files.deleteIfExists(err);
    }
  }

  private static long highWaterMark(long pid) {
    try {
      return Files.readAllLines(Path.of("/proc", Long.toString(pid), "status")).stream()
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")))
          .findFirst()
          .orElse(0);
    } catch (IOException gone) {
      return 0;
    }
  }
}

package plumbline.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import plumbline.cli.Main;

/**
 * One run in a process of its own that says at its end what it took: status, processor time in
 * milliseconds, peak of resident memory in kilobytes, and bytes read.
 */
final class Measured {
  /** Instead of a command: only reads the files of a folder. */
  static final String READ = "read-bytes";

  private Measured() {}

  /** Runs the command of the arguments. */
  public static void main(String[] args) throws IOException {
    long bytes = 0;
    int status = 0;
    if (args[0].equals(READ)) {
      bytes = read(Path.of(args[1]));
    } else {
      status =
          new Main(
                  InputStream.nullInputStream(),
                  OutputStream.nullOutputStream(),
                  OutputStream.nullOutputStream(),
                  false,
                  false)
              .run(args);
    }
    long processor =
        ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    System.out.println(status + " " + processor / 1_000_000 + " " + peak() + " " + bytes);
  }

  private static long read(Path folder) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(folder)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    long bytes = 0;
    for (Path file : files) {
      bytes += Files.readAllBytes(file).length;
    }
    return bytes;
  }

  /** The kernel's own count; see proc(5). */
  private static long peak() throws IOException {
    return Files.readAllLines(Path.of("/proc/self/status")).stream()
        .filter(line -> line.startsWith("VmHWM:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")))
        .findFirst()
        .orElse(0);
  }
}

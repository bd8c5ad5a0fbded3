package plumbline.history;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import plumbline.history.RunReader.NoRun;
import plumbline.result.Past;

/**
 * A folder that keeps one file for each run. A file gets its name only when it is whole and on the
 * disk, and no file is ever changed, replaced or deleted: so a run that is killed, or several at
 * once, leave every other run as it was.
 */
public final class RunFolder {
  /** Unfinished files begin so; whoever reads a folder of configs passes over names with a dot. */
  private static final String UNFINISHED = ".plumbline-unfinished-";

  private static final AtomicLong SERIAL = new AtomicLong();

  private final Path folder;

  /** A folder that may not exist yet. */
  public RunFolder(Path folder) {
    this.folder = folder;
  }

  /**
   * Reads the runs that are earlier than a moment: the newest of them wholly, of the others what
   * stands before their findings. What cannot be read, is of another site or no run is set aside.
   *
   * @param at the moment of the new run
   * @param site the site of its design
   * @throws IOException where the folder cannot be listed; an absent one is an empty one
   */
  public Earlier before(Instant at, Optional<String> site) throws IOException {
    Instant now = at.truncatedTo(ChronoUnit.SECONDS);
    List<String> setAside = new ArrayList<>();
    TreeMap<RunName, Path> runs = new TreeMap<>(Collections.reverseOrder());
    int later = 0;
    for (Path file : files()) {
      String name = file.getFileName().toString();
      Optional<RunName> run = RunName.parse(name);
      if (run.isEmpty()) {
        note(name).ifPresent(setAside::add);
      } else if (run.get().at().isBefore(now)) {
        runs.put(run.get(), file);
      } else if (run.get().at().isAfter(now)) {
        later++;
      }
    }
    Optional<PastRun> newest = Optional.empty();
    List<Past.TrendPoint> trend = new ArrayList<>();
    for (var run : runs.entrySet()) {
      try {
        PastRun read = read(run.getValue(), run.getKey(), newest.isPresent());
        if (site.isPresent() && read.site().isPresent() && !site.equals(read.site())) {
          throw new NoRun("is of another site");
        }
        trend.add(read.point());
        newest = newest.or(() -> Optional.of(read));
      } catch (NoRun e) {
        setAside.add(run.getKey() + ": " + e.getMessage() + "; left out, and left as it is");
      } catch (IOException e) {
        setAside.add(run.getKey() + ": cannot be read; left out");
      }
    }
    Collections.reverse(trend);
    Collections.sort(setAside);
    return new Earlier(newest, trend, later, setAside);
  }

  private List<Path> files() throws IOException {
    List<Path> files = new ArrayList<>();
    if (!Files.exists(folder)) {
      return files;
    }
    try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
      stream.forEach(files::add);
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    Collections.sort(files);
    return files;
  }

  /** The files that are named as runs are: no configs, wherever they lie. */
  public List<Path> runs() {
    try {
      return files().stream()
          .filter(file -> RunName.parse(file.getFileName().toString()).isPresent())
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  /** What to say of a file that is not named as a run is. */
  private static Optional<String> note(String name) {
    if (name.startsWith(UNFINISHED)) {
      return isBeingWritten(name)
          ? Optional.empty()
          : Optional.of(
              name + ": unfinished, by a run that was killed; left out, and can be deleted");
    }
    return name.startsWith(".")
        ? Optional.empty()
        : Optional.of(name + ": not named as a run is; left out, and left as it is");
  }

  private static boolean isBeingWritten(String name) {
    String owner = name.substring(UNFINISHED.length()).replaceFirst("-.*", "");
    return owner.matches("[0-9]{1,18}") && ProcessHandle.of(Long.parseLong(owner)).isPresent();
  }

  private static PastRun read(Path file, RunName name, boolean headOnly) throws IOException, NoRun {
    if (!Files.isRegularFile(file)) {
      throw new NoRun("is no file");
    }
    PastRun run;
    try (InputStream text = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
      run = RunReader.read(name.toString(), text, headOnly && endsAsWritten(file));
    }
    if (!run.at().equals(name.at())) {
      throw new NoRun("says another moment than its name");
    }
    return run;
  }

  /**
   * Whether the last line is the brace that closes the whole: all inner ones are indented, so a
   * text that breaks off does not end so. A text in another form is read to its end.
   */
  private static boolean endsAsWritten(Path file) throws IOException {
    byte[] end = new byte[3];
    try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "r")) {
      if (bytes.length() < end.length) {
        return false;
      }
      bytes.seek(bytes.length() - end.length);
      bytes.readFully(end);
    }
    return new String(end, StandardCharsets.ISO_8859_1).equals("\n}\n");
  }

  /** What was done with a run. */
  public enum Kept {
    /** It has a file of its own now. */
    WRITTEN,
    /** The folder has this very run already. */
    KNOWN
  }

  /**
   * Keeps a run: whole, or not at all. The folder is made where only its last part is missing.
   *
   * @param at when the run is said to be
   * @param text its report in JSON
   * @throws IOException where that fails; nothing is left behind then
   */
  public Kept keep(Instant at, String text) throws IOException {
    if (!Files.exists(folder)) {
      make();
    }
    if (!Files.isDirectory(folder)) {
      throw new NotDirectoryException(folder.toString());
    }
    Path target = folder.resolve(RunName.of(at, text).toString());
    if (Files.exists(target) && Files.readString(target).equals(text)) {
      return Kept.KNOWN;
    }
    Path unfinished =
        folder.resolve(
            UNFINISHED
                + ProcessHandle.current().pid()
                + "-"
                + SERIAL.incrementAndGet()
                + "-"
                + Long.toHexString(System.nanoTime()));
    try {
      write(unfinished, text);
      publish(unfinished, target);
    } finally {
      Files.deleteIfExists(unfinished);
    }
    flush();
    return Kept.WRITTEN;
  }

  private void make() throws IOException {
    try {
      Files.createDirectory(folder);
    } catch (FileAlreadyExistsException e) {
      // Another run was faster, which is as well.
    }
  }

  private static void write(Path file, String text) throws IOException {
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      // Before it has its name: a name must never be on the disk before what it stands for.
      channel.force(true);
    }
  }

  /**
   * A second name cannot replace a file; where a file system has none, the same text does no harm.
   */
  private static void publish(Path unfinished, Path target) throws IOException {
    try {
      Files.createLink(target, unfinished);
    } catch (FileAlreadyExistsException e) {
      // A damaged file of that very name stays as it is, for nothing here is ever replaced.
      if (!Files.readString(target).equals(Files.readString(unfinished))) {
        throw e;
      }
    } catch (UnsupportedOperationException | IOException e) {
      if (Files.exists(target)) {
        throw e;
      }
      Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE);
    }
  }

  /**
   * The name must be on the disk too; where folders cannot be flushed, nothing more can be done.
   */
  private void flush() {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Some file systems know no such thing: the run is written all the same.
    }
  }
}

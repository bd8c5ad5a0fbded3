package plumbline.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;

/**
 * Reads config files as they come. Nothing here throws for a bad file, waits for a pipe, or holds
 * more than the cap.
 */
public final class Intake {
  /** A longer file is not read: 32 MiB. */
  public static final int CAP = 32 * 1024 * 1024;

  /** A NUL among so many first bytes makes a file binary. */
  private static final int PROBE = 8 * 1024;

  private static final String TOO_LONG = "is longer than 32 MiB";
  private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

  private Intake() {}

  /**
   * The files that command-line arguments mean, in order: a folder means all files below it but
   * dot-files, sorted by path; anything else, {@code -} too, means itself. A folder that cannot be
   * listed stands for itself, so that reading it says so.
   *
   * @param excluded files to leave out of folders, such as the design
   */
  public static List<Source> expand(List<String> arguments, Collection<Path> excluded) {
    FolderWalk walk = new FolderWalk(excluded);
    arguments.forEach(walk::argument);
    return walk.sources();
  }

  /** Reads a file; what is no regular file is refused without being opened. */
  public static Read read(Path path, String asTyped) {
    String stem = stem(path);
    try {
      BasicFileAttributes attributes = Files.readAttributes(path, BasicFileAttributes.class);
      if (attributes.isDirectory()) {
        return new Read.Failed(asTyped, stem, "is a folder that cannot be listed");
      }
      if (!attributes.isRegularFile()) {
        return new Read.Failed(asTyped, stem, "is a pipe, socket or device, not a file");
      }
      // A binary file is called binary, however long.
      try (InputStream in = Files.newInputStream(path)) {
        return read(in, attributes.size() > CAP, asTyped, stem);
      }
    } catch (IOException e) {
      return new Read.Failed(asTyped, stem, reason(path, e));
    }
  }

  /** Reads standard input to its end or to the cap; its name and stem are {@code -}. */
  public static Read read(InputStream standardInput) {
    try {
      return read(standardInput, false, Source.STANDARD_INPUT, Source.STANDARD_INPUT);
    } catch (IOException e) {
      return new Read.Failed(Source.STANDARD_INPUT, Source.STANDARD_INPUT, "cannot be read");
    }
  }

  private static Read read(InputStream in, boolean tooLong, String asTyped, String stem)
      throws IOException {
    byte[] probe = in.readNBytes(PROBE);
    if (probe.length == 0) {
      return new Read.Failed(asTyped, stem, "is empty");
    }
    for (byte b : probe) {
      if (b == 0) {
        return new Read.Failed(asTyped, stem, "is binary, not text");
      }
    }
    if (tooLong) {
      return new Read.Failed(asTyped, stem, TOO_LONG);
    }
    byte[] rest = in.readNBytes(CAP - probe.length + 1);
    if (probe.length + rest.length > CAP) {
      return new Read.Failed(asTyped, stem, TOO_LONG);
    }
    byte[] bytes = Arrays.copyOf(probe, probe.length + rest.length);
    System.arraycopy(rest, 0, bytes, probe.length, rest.length);
    String text = decode(bytes);
    return text.isBlank()
        ? new Read.Failed(asTyped, stem, "holds nothing but blanks")
        : new Read.Text(asTyped, stem, sha256(bytes), text);
  }

  /** UTF-8 where the bytes are valid UTF-8, else Latin-1; a byte-order mark is left out. */
  static String decode(byte[] bytes) {
    int from = Arrays.mismatch(bytes, MARK) == MARK.length || Arrays.equals(bytes, MARK) ? 3 : 0;
    try {
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(bytes, from, bytes.length - from))
          .toString();
    } catch (CharacterCodingException notUtf8) {
      return new String(bytes, from, bytes.length - from, StandardCharsets.ISO_8859_1);
    }
  }

  private static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  private static String stem(Path path) {
    Path last = path.getFileName();
    String name = last == null ? path.toString() : last.toString();
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static String reason(Path path, IOException e) {
    if (e instanceof NoSuchFileException) {
      boolean link = Files.exists(path, LinkOption.NOFOLLOW_LINKS);
      return link ? "is a link to nothing" : "does not exist";
    }
    if (e instanceof AccessDeniedException) {
      return "may not be read: permission denied";
    }
    boolean loop =
        e instanceof FileSystemLoopException
            || (e instanceof FileSystemException problem
                && String.valueOf(problem.getReason()).contains("symbolic links"));
    return loop ? "is a link to itself" : "cannot be read";
  }
}

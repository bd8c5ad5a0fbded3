package plumbline.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

class IntakeTest {
  @TempDir Path folder;

  private static String failure(Read read) {
    assertThat(read).isInstanceOf(Read.Failed.class);
    return ((Read.Failed) read).reason();
  }

  private static Read.Text text(Read read) {
    assertThat(read).isInstanceOf(Read.Text.class);
    return (Read.Text) read;
  }

  private Path file(String name, byte... bytes) throws IOException {
    Path path = folder.resolve(name);
    Files.createDirectories(path.getParent());
    return Files.write(path, bytes);
  }

  private Path file(String name, String text) throws IOException {
    return file(name, text.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void aTextFileKeepsItsNameAsTypedItsStemAndItsDigest() throws IOException {
    Path path = file("north-sw1.cfg", "abc");

    Read.Text read = text(Intake.read(path, "configs/north-sw1.cfg"));

    assertThat(read.file()).isEqualTo("configs/north-sw1.cfg");
    assertThat(read.stem()).isEqualTo("north-sw1");
    assertThat(read.text()).isEqualTo("abc");
    // Source: FIPS 180-4, the one-block example message "abc" of SHA-256.
    assertThat(read.sha256())
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  @Test
  void utf8IsReadAsUtf8WithoutItsByteOrderMark() throws IOException {
    assertThat(text(Intake.read(file("a", "\uFEFFdescription Käse"), "a")).text())
        .isEqualTo("description Käse");
  }

  @Test
  void whatIsNoValidUtf8IsReadAsLatin1() throws IOException {
    byte[] bytes = "description Käse".getBytes(StandardCharsets.ISO_8859_1);

    assertThat(text(Intake.read(file("a", bytes), "a")).text()).isEqualTo("description Käse");
  }

  @Test
  void anEmptyFileIsRefused() throws IOException {
    assertThat(failure(Intake.read(file("a"), "a"))).isEqualTo("is empty");
  }

  @Test
  void aFileOfBlanksIsRefused() throws IOException {
    assertThat(failure(Intake.read(file("a", " \n\n"), "a"))).isEqualTo("holds nothing but blanks");
  }

  @Test
  void aNulInTheFirst8KiBMakesAFileBinary() throws IOException {
    byte[] last = new byte[8192];
    java.util.Arrays.fill(last, (byte) 'x');
    last[8191] = 0;
    byte[] behind = new byte[8193];
    java.util.Arrays.fill(behind, (byte) 'x');
    behind[8192] = 0;

    assertThat(failure(Intake.read(file("a", last), "a"))).isEqualTo("is binary, not text");
    assertThat(text(Intake.read(file("b", behind), "b")).text()).hasSize(8193);
  }

  @Test
  @Timeout(5)
  void aSparseFileOf100MbIsRefusedWithoutBeingRead() throws IOException {
    Path path = file("big.cfg", "hostname north-sw1\n".repeat(1000));
    try (RandomAccessFile file = new RandomAccessFile(path.toFile(), "rw")) {
      file.setLength(100_000_000);
    }

    assertThat(failure(Intake.read(path, "big.cfg"))).isEqualTo("is longer than 32 MiB");
  }

  @Test
  void aFileOfExactlyTheCapIsRead() throws IOException {
    byte[] bytes = new byte[Intake.CAP];
    java.util.Arrays.fill(bytes, (byte) '!');

    assertThat(text(Intake.read(file("a", bytes), "a")).text()).hasSize(Intake.CAP);
  }

  @Test
  @Timeout(10)
  void aPipeIsRefusedWithoutWaitingForItsWriter() throws Exception {
    Path pipe = folder.resolve("pipe");
    Process process = new ProcessBuilder("mkfifo", pipe.toString()).start();
    assertThat(process.waitFor(5, TimeUnit.SECONDS)).isTrue();

    assertThat(failure(Intake.read(pipe, "pipe")))
        .isEqualTo("is a pipe, socket or device, not a file");
  }

  @Test
  void aSocketAndADeviceAreRefused() throws IOException {
    Path socket = Path.of(System.getProperty("java.io.tmpdir"), "plumbline-" + System.nanoTime());
    try (ServerSocketChannel server = ServerSocketChannel.open(StandardProtocolFamily.UNIX)) {
      server.bind(UnixDomainSocketAddress.of(socket));
      assertThat(failure(Intake.read(socket, "s")))
          .isEqualTo("is a pipe, socket or device, not a file");
    } finally {
      Files.deleteIfExists(socket);
    }
    assertThat(failure(Intake.read(Path.of("/dev/null"), "/dev/null")))
        .isEqualTo("is a pipe, socket or device, not a file");
  }

  @Test
  void linksToNothingAndToThemselvesAndMissingFilesAreToldApart() throws IOException {
    Path dangling = Files.createSymbolicLink(folder.resolve("dangling"), folder.resolve("gone"));
    Path loop = folder.resolve("loop");
    Files.createSymbolicLink(loop, loop);

    assertThat(failure(Intake.read(dangling, "dangling"))).isEqualTo("is a link to nothing");
    assertThat(failure(Intake.read(loop, "loop"))).isEqualTo("is a link to itself");
    assertThat(failure(Intake.read(folder.resolve("gone"), "gone"))).isEqualTo("does not exist");
  }

  @Test
  void aFileWithoutPermissionIsRefused() throws IOException {
    Path path = file("a", "hostname x\n");
    org.junit.jupiter.api.Assumptions.assumeTrue(path.toFile().setReadable(false));
    // The administrator reads everything; then the file is a text like any other.
    boolean administrator = Files.isReadable(path);

    Read read = Intake.read(path, "a");

    assertThat(read instanceof Read.Text).isEqualTo(administrator);
    if (!administrator) {
      assertThat(failure(read)).isEqualTo("may not be read: permission denied");
    }
  }

  @Test
  void aFolderGivenForAFileIsRefused() {
    assertThat(failure(Intake.read(folder, "f"))).isEqualTo("is a folder that cannot be listed");
  }

  @Test
  void standardInputIsReadToItsEndOrToTheCap() {
    byte[] config = "hostname x\n".getBytes(StandardCharsets.UTF_8);

    Read.Text read = text(Intake.read(new ByteArrayInputStream(config)));

    assertThat(read.file()).isEqualTo("-");
    assertThat(read.stem()).isEqualTo("-");
    assertThat(read.text()).isEqualTo("hostname x\n");
    assertThat(failure(Intake.read(new EndlessText()))).isEqualTo("is longer than 32 MiB");
  }

  /** A stream of one letter that never ends. */
  private static final class EndlessText extends java.io.InputStream {
    @Override
    public int read() {
      return 'x';
    }

    @Override
    public int read(byte[] bytes, int from, int length) {
      java.util.Arrays.fill(bytes, from, from + length, (byte) 'x');
      return length;
    }
  }

  @Test
  void foldersAreWalkedSortedWithoutDotFilesAndExclusions() throws IOException {
    file("b.cfg", "x");
    file("a/z.cfg", "x");
    file("a/.hidden", "x");
    file(".git/config", "x");
    Path design = file("design.yaml", "x");
    Path single = file("single/s.cfg", "x");
    String root = folder.toString();

    List<Source> sources =
        Intake.expand(List.of("-", single.toString(), root + "/"), List.of(design));

    assertThat(sources.stream().map(Source::asTyped))
        .containsExactly(
            "-", single.toString(), root + "/a/z.cfg", root + "/b.cfg", root + "/single/s.cfg");
    assertThat(sources.get(0).isStandardInput()).isTrue();
    assertThat(sources.get(1).isStandardInput()).isFalse();
  }

  @Test
  void linksToFoldersAreFollowedButNeverInALoop() throws IOException {
    file("real/a.cfg", "x");
    Files.createSymbolicLink(folder.resolve("real/up"), folder);
    Files.createSymbolicLink(folder.resolve("twin"), folder.resolve("real"));
    String root = folder.toString();

    assertThat(Intake.expand(List.of(root), List.of()).stream().map(Source::asTyped))
        .containsExactly(root + "/real/a.cfg", root + "/twin/a.cfg");
  }

  @Test
  void pipesAndDanglingLinksInAFolderAreNamedSoThatReadingThemSaysWhy() throws Exception {
    Process process = new ProcessBuilder("mkfifo", folder.resolve("a-pipe").toString()).start();
    assertThat(process.waitFor(5, TimeUnit.SECONDS)).isTrue();
    Files.createSymbolicLink(folder.resolve("b-link"), folder.resolve("gone"));

    List<Source> sources = Intake.expand(List.of(folder.toString()), List.of());

    assertThat(sources.stream().map(source -> failure(Intake.read(source.path(), "x"))))
        .containsExactly("is a pipe, socket or device, not a file", "is a link to nothing");
  }

  @Test
  void anArgumentThatDoesNotExistIsKept() {
    assertThat(Intake.expand(List.of("no-such-file"), List.of()))
        .containsExactly(new Source(Path.of("no-such-file"), "no-such-file"));
  }

  @Property(tries = 200)
  void anyBytesDecodeWithoutFailure(@ForAll byte[] bytes) {
    String decoded = Intake.decode(bytes);

    boolean utf8 =
        java.util.Arrays.equals(
            new String(bytes, StandardCharsets.UTF_8).getBytes(StandardCharsets.UTF_8), bytes);
    assertThat(decoded)
        .isEqualTo(
            new String(bytes, utf8 ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1)
                .replaceFirst("^\uFEFF", ""));
  }
}

package plumbline.intake;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Walks folders for config files; links are followed, but never back into a folder above. */
final class FolderWalk {
  private final Set<Path> excluded = new HashSet<>();
  private final Set<Path> open = new HashSet<>();
  private final List<Source> sources = new ArrayList<>();

  FolderWalk(Collection<Path> excluded) {
    excluded.forEach(path -> realPath(path).ifPresent(this.excluded::add));
  }

  /** Takes one argument of the command line. */
  void argument(String argument) {
    Path path = Path.of(argument);
    if (argument.equals(Source.STANDARD_INPUT) || !Files.isDirectory(path)) {
      sources.add(new Source(path, argument));
    } else {
      folder(path, argument);
    }
  }

  private void folder(Path folder, String asTyped) {
    Optional<Path> real = realPath(folder);
    if (real.isEmpty()) {
      sources.add(new Source(folder, asTyped));
      return;
    }
    if (!open.add(real.get())) {
      return;
    }
    List<Path> entries = new ArrayList<>();
    try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
      stream.forEach(entries::add);
    } catch (IOException | DirectoryIteratorException e) {
      sources.add(new Source(folder, asTyped));
    }
    entries.sort(Comparator.comparing(entry -> entry.getFileName().toString()));
    String prefix = asTyped.endsWith("/") ? asTyped : asTyped + "/";
    for (Path entry : entries) {
      String name = entry.getFileName().toString();
      if (name.startsWith(".")) {
        continue;
      }
      if (Files.isDirectory(entry)) {
        folder(entry, prefix + name);
      } else if (realPath(entry).filter(excluded::contains).isEmpty()) {
        sources.add(new Source(entry, prefix + name));
      }
    }
    open.remove(real.get());
  }

  private static Optional<Path> realPath(Path path) {
    try {
      return Optional.of(path.toRealPath());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** The files found, in order. */
  List<Source> sources() {
    return sources;
  }
}

package plumbline.run;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import plumbline.design.DesignSwitch;
import plumbline.effective.Dialect;
import plumbline.effective.EffectiveSettings;
import plumbline.effective.SizeLimit;
import plumbline.effective.SwitchSettings;
import plumbline.intake.Intake;
import plumbline.intake.Read;
import plumbline.intake.Source;
import plumbline.statement.MarkedText;
import plumbline.statement.SwitchText;
import plumbline.syntax.ConfigReader;
import plumbline.syntax.StatementParser;

/** Reads the configs of a run, several at a time; their order is that of the arguments. */
public final class ConfigReading {
  /** Files longer than this are read one at a time, so that memory does not depend on luck. */
  private static final long LARGE = 2L * 1024 * 1024;

  private final List<Source> sources;
  private final List<String> arguments;
  private final InputStream standardInput;
  private final ConfigReader reader = new ConfigReader(new StatementParser());
  private final Semaphore large = new Semaphore(1);
  private final Optional<TextTaker> taker;

  private ConfigReading(
      List<Source> sources,
      List<String> arguments,
      InputStream standardInput,
      Optional<TextTaker> taker) {
    this.sources = sources;
    this.arguments = arguments;
    this.standardInput = standardInput;
    this.taker = taker;
  }

  /** Takes the text of each switch beside its settings, from several threads. */
  interface TextTaker {
    /** Takes one. */
    void take(SwitchSettings settings, MarkedText text);
  }

  /** The same, handing out the texts as they are read. */
  ConfigReading handingOut(TextTaker texts) {
    return new ConfigReading(sources, arguments, standardInput, Optional.of(texts));
  }

  /**
   * Finds the files.
   *
   * @param arguments files, folders or {@code -}, as typed
   * @param exclusions files that are no configs wherever they lie: the design's
   * @param standardInput what {@code -} means
   */
  public static ConfigReading of(
      List<String> arguments, Collection<Path> exclusions, InputStream standardInput) {
    return new ConfigReading(
        Intake.expand(arguments, exclusions),
        List.copyOf(arguments),
        standardInput,
        Optional.empty());
  }

  /** Whether one of the arguments is a folder. */
  public boolean hasFolder() {
    return arguments.stream().anyMatch(argument -> Files.isDirectory(Path.of(argument)));
  }

  /** Whether an argument is a file of its own. */
  public static boolean isFile(String argument) {
    return !argument.equals(Source.STANDARD_INPUT) && Files.isRegularFile(Path.of(argument));
  }

  /** The files, in order. */
  public List<Path> paths() {
    return sources.stream().filter(source -> !source.isStandardInput()).map(Source::path).toList();
  }

  /**
   * Reads them all.
   *
   * @param switchOf the switch of the design that settings are of; it may name their dialect
   * @param harmless patterns of unknown statements that the design vouches for
   * @param watcher hears how many are read
   */
  public List<ConfigFile> read(
      Function<SwitchSettings, Optional<DesignSwitch>> switchOf,
      List<String> harmless,
      Watcher watcher) {
    int threads = Math.max(2, Runtime.getRuntime().availableProcessors());
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Callable<ConfigFile>> tasks = new ArrayList<>();
      AtomicInteger done = new AtomicInteger();
      sources.forEach(
          source ->
              tasks.add(
                  () -> {
                    ConfigFile file = guarded(source, switchOf, harmless);
                    watcher.read(done.incrementAndGet(), sources.size());
                    return file;
                  }));
      List<ConfigFile> files = new ArrayList<>();
      for (Future<ConfigFile> file : pool.invokeAll(tasks)) {
        files.add(file.get());
      }
      return List.copyOf(files);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while reading configs", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("reading a config failed beyond its guard", e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  /** The guard around each file: what goes wrong in one never hides the others. */
  private ConfigFile guarded(
      Source source,
      Function<SwitchSettings, Optional<DesignSwitch>> switchOf,
      List<String> harmless) {
    try {
      return isLarge(source)
          ? readAlone(source, switchOf, harmless)
          : read(source, switchOf, harmless);
    } catch (OutOfMemoryError e) {
      return new ConfigFile.Unread(
          source.asTyped(),
          stem(source),
          isNamed(source),
          "needs more memory than there is",
          false);
    } catch (RuntimeException | StackOverflowError bug) {
      // Not its message: it may quote the config, and a config may hold secrets.
      String where = bug.getStackTrace().length == 0 ? "" : " at " + bug.getStackTrace()[0];
      return new ConfigFile.Unread(
          source.asTyped(),
          stem(source),
          isNamed(source),
          "could not be read for a bug in this program: " + bug.getClass().getSimpleName() + where,
          true);
    }
  }

  private static boolean isLarge(Source source) {
    return source.isStandardInput() || source.path().toFile().length() > LARGE;
  }

  private ConfigFile readAlone(
      Source source,
      Function<SwitchSettings, Optional<DesignSwitch>> switchOf,
      List<String> harmless) {
    large.acquireUninterruptibly();
    try {
      return read(source, switchOf, harmless);
    } finally {
      large.release();
    }
  }

  private ConfigFile read(
      Source source,
      Function<SwitchSettings, Optional<DesignSwitch>> switchOf,
      List<String> harmless) {
    Read read =
        source.isStandardInput()
            ? Intake.read(standardInput)
            : Intake.read(source.path(), source.asTyped());
    if (read instanceof Read.Text text) {
      Optional<String> own = OwnFiles.kind(text.text());
      if (own.isPresent()) {
        return isNamed(source)
            ? new ConfigFile.Unread(
                text.file(), text.stem(), true, "is " + own.get() + ", no config", false)
            : new ConfigFile.Skipped(text.file(), text.stem(), own.get());
      }
      List<SwitchSettings> switches = new ArrayList<>();
      for (Cut cut : cut(text)) {
        SwitchText one = cut.text();
        Optional<String> tooMuch = SizeLimit.exceeded(one);
        if (tooMuch.isPresent()) {
          return new ConfigFile.Unread(
              text.file(), text.stem(), isNamed(source), tooMuch.get(), false);
        }
        SwitchSettings settings = settings(one.vouching(harmless), switchOf);
        cut.marked().ifPresent(marked -> taker.orElseThrow().take(settings, marked));
        switches.add(settings);
      }
      return new ConfigFile.Read(
          text.file(), text.stem(), isNamed(source), text.sha256(), switches);
    }
    Read.Failed failed = (Read.Failed) read;
    return new ConfigFile.Unread(
        failed.file(), failed.stem(), isNamed(source), failed.reason(), false);
  }

  /** The text of one switch, and the same with marks where somebody takes them. */
  private record Cut(SwitchText text, Optional<MarkedText> marked) {}

  private List<Cut> cut(Read.Text text) {
    return taker.isPresent()
        ? reader.readMarked(text.file(), text.stem(), text.text()).stream()
            .map(marked -> new Cut(marked.text(), Optional.of(marked)))
            .toList()
        : reader.read(text.file(), text.stem(), text.text()).stream()
            .map(one -> new Cut(one, Optional.empty()))
            .toList();
  }

  /** A design may know a switch's dialect better than its text tells. */
  private static SwitchSettings settings(
      SwitchText text, Function<SwitchSettings, Optional<DesignSwitch>> switchOf) {
    SwitchSettings detected = EffectiveSettings.of(text, Optional.empty());
    Optional<Dialect> override =
        switchOf
            .apply(detected)
            .flatMap(DesignSwitch::dialect)
            .flatMap(wanted -> Dialect.named(wanted.value()));
    return override.isEmpty() ? detected : EffectiveSettings.of(text, override);
  }

  private boolean isNamed(Source source) {
    return arguments.contains(source.asTyped());
  }

  private static String stem(Source source) {
    Path name = source.path().getFileName();
    return name == null ? "" : name.toString();
  }
}

package plumbline.cli;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import plumbline.design.Design;
import plumbline.history.Earlier;
import plumbline.history.RunFolder;
import plumbline.result.Result;
import plumbline.run.WaiverFiles;
import plumbline.text.Wording;
import plumbline.waiver.Proposal;

/** The options by which an audit is compared with earlier ones and with what was accepted. */
final class FollowOptions {
  @Option(
      names = "--history",
      paramLabel = "DIR",
      description =
          "Keep this run in DIR and say what became of every finding since the newest run there"
              + " that is earlier. DIR is made if it is not there.")
  private Optional<Path> history = Optional.empty();

  @Option(
      names = "--waivers",
      paramLabel = "FILE",
      description =
          "Take what FILE lists, in YAML or JSON, as accepted: it is told in a part of its own and"
              + " counts no more.")
  private Optional<String> waivers = Optional.empty();

  @Option(
      names = "--propose-waivers",
      paramLabel = "FILE",
      description =
          "Also write a file of waivers for all that is open, to be filled in: it is not valid until"
              + " each has a reason, a name and an end. FILE must not exist.")
  private Optional<Path> proposal = Optional.empty();

  /**
   * Refuses what can be seen to be wrong before anything is read.
   *
   * @throws ParameterException naming the option
   */
  void check(CommandSpec spec) {
    if (history.isPresent() && Files.exists(history.get()) && !Files.isDirectory(history.get())) {
      throw new ParameterException(
          spec.commandLine(),
          "--history " + Wording.quote(history.get().toString()) + ": is no folder");
    }
    if (proposal.isPresent() && Files.exists(proposal.get())) {
      throw new ParameterException(
          spec.commandLine(),
          "--propose-waivers "
              + Wording.quote(proposal.get().toString())
              + ": exists already; a proposal replaces nothing");
    }
  }

  /** The waivers; empty where none are given or where they cannot be used, which is said. */
  WaiverFiles.Answer waivers() {
    return waivers.map(WaiverFiles::read).orElse(new WaiverFiles.Answer.Unusable(List.of()));
  }

  /** Whether waivers are given. */
  boolean hasWaivers() {
    return waivers.isPresent();
  }

  /** Files that are no configs: the waivers and the runs of the history. */
  List<Path> notConfigs() {
    return Stream.concat(
            waivers.stream().map(Path::of),
            history.stream().flatMap(dir -> new RunFolder(dir).runs().stream()))
        .toList();
  }

  /**
   * What a history holds.
   *
   * @param runs earlier runs; empty where no history is kept, or where it cannot be read
   * @param status done, or that the history cannot be read, nor the run kept
   */
  record Opened(Optional<Earlier> runs, int status) {}

  /** Reads earlier runs, and says what of them is left out. */
  Opened open(Console console, Instant at, Design design) {
    if (history.isEmpty()) {
      return new Opened(Optional.empty(), Status.DONE);
    }
    try {
      Earlier earlier = new RunFolder(history.get()).before(at, design.site());
      earlier.setAside().forEach(line -> console.complain(history.get() + "/" + line));
      if (earlier.later() > 0) {
        console.complain(
            history.get()
                + ": "
                + (earlier.later() == 1 ? "1 run is" : earlier.later() + " runs are")
                + " later than this one and not compared with; if that is not meant, look at the"
                + " clock");
      }
      return new Opened(Optional.of(earlier), Status.DONE);
    } catch (IOException e) {
      console.complain(
          history.get() + ": the history cannot be read, so nothing is compared: " + reason(e));
      return new Opened(Optional.empty(), Status.CANNOT_WRITE);
    }
  }

  /**
   * Keeps the run and writes the proposal.
   *
   * @param json the report of the run
   * @return the status: done, or that something could not be written
   */
  int write(Console console, Result result, Supplier<String> json) {
    int status = Status.DONE;
    if (history.isPresent() && result.followUp().past().isPresent()) {
      try {
        new RunFolder(history.get()).keep(result.at(), json.get());
      } catch (IOException e) {
        console.complain(history.get() + ": this run cannot be kept: " + reason(e));
        status = Status.CANNOT_WRITE;
      }
    }
    if (proposal.isPresent()) {
      status = Math.max(status, propose(console, proposal.get(), result));
    }
    return status;
  }

  private static int propose(Console console, Path file, Result result) {
    Optional<String> text =
        Proposal.of(
            result.findings(),
            result.followUp().accepted(),
            LocalDate.ofInstant(result.at(), ZoneOffset.UTC));
    if (text.isEmpty()) {
      console.complain(file + ": not written, for nothing is open");
      return Status.DONE;
    }
    try {
      NewFile.write(file, text.get());
      return Status.DONE;
    } catch (IOException e) {
      console.complain(file + ": the proposal cannot be written: " + reason(e));
      return Status.CANNOT_WRITE;
    }
  }

  private static String reason(IOException e) {
    if (e instanceof java.nio.file.FileAlreadyExistsException) {
      return "there is a file of that name already, and it is not replaced";
    }
    if (e instanceof java.nio.file.NoSuchFileException) {
      return "its folder does not exist";
    }
    if (e instanceof java.nio.file.AccessDeniedException) {
      return "permission denied";
    }
    if (e instanceof java.nio.file.NotDirectoryException) {
      return "it is no folder";
    }
    return e instanceof FileSystemException failure && failure.getReason() != null
        ? failure.getReason()
        : String.valueOf(e.getMessage());
  }
}

package plumbline.syntax;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import plumbline.statement.MarkedText;
import plumbline.statement.SwitchText;
import plumbline.syntax.SwitchSplitter.Part;

/**
 * Cuts the text of one file into its switches and their statements. Thread-safe; holds nothing of
 * the texts it reads.
 */
public final class ConfigReader {
  private final StatementSource source;

  /** A reader whose statements mean what the grammar says. */
  public ConfigReader(StatementParser parser) {
    this.source = Objects.requireNonNull(parser);
  }

  /**
   * Reads a file's decoded text; never throws.
   *
   * @param file path as typed
   * @param stem the file's name without folder and extension
   * @param text all of it
   * @return the switches in order, at least one; together their lines are the file's
   */
  public List<SwitchText> read(String file, String stem, String text) {
    return cut(file, stem, text, (scan, part, one) -> one);
  }

  /** The same, with a mark for each line. */
  public List<MarkedText> readMarked(String file, String stem, String text) {
    return cut(
        file,
        stem,
        text,
        (scan, part, one) -> new MarkedText(one, Marking.of(source, scan, part, one)));
  }

  /** Makes something of the text of one switch. */
  private interface Finish<T> {
    T of(ScannedLines scan, Part part, SwitchText text);
  }

  private <T> List<T> cut(String file, String stem, String text, Finish<T> finish) {
    ScannedLines scan = LineScan.scan(new CleanLines(new Lines(text)), source);
    List<Part> parts = SwitchSplitter.split(scan);
    List<T> switches = new ArrayList<>();
    for (Part part : parts) {
      if (parts.size() > 1 && !part.named()) {
        nameByPrompt(scan, part);
      }
      switches.add(finish.of(scan, part, read(file, stem, scan, part)));
    }
    return switches;
  }

  /** Of several switches in one file the file's name can name none; their prompts do. */
  private static void nameByPrompt(ScannedLines scan, Part part) {
    for (int line = part.first(); line < part.end() && part.host().isPresent(); line++) {
      if (scan.kind(line) == LineKind.NOISE && scan.prompt(line).isPresent()) {
        scan.name(line, part.host().get());
        return;
      }
    }
  }

  private SwitchText read(String file, String stem, ScannedLines scan, Part part) {
    MarkedPart marked = new MarkedPart(scan, part);
    TextFacts facts = new TextFacts(scan, marked);
    Cutter.Cut cut = Cutter.cut(scan, part, new Reader(source), facts.flat());
    Lines lines = scan.lines().lines();
    return new SwitchText(
        file,
        stem,
        lines.number(part.first()),
        lines.number(part.end() - 1),
        cut.statements(),
        facts.script(cut),
        new BreakOff(scan, marked, source).of(cut),
        times(scan, part));
  }

  private static SwitchText.Times times(ScannedLines scan, Part part) {
    HeaderTimes times = new HeaderTimes();
    for (int line = part.first(); line < part.end(); line++) {
      LineKind kind = scan.kind(line);
      if (kind == LineKind.COMMENT) {
        times.comment(scan.lines().lines().number(line), scan.statement(line));
      } else if (kind == LineKind.STATEMENT && Shapes.isPortHeader(scan.statement(line))) {
        break;
      }
    }
    return times.times();
  }
}

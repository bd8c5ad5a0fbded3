package plumbline.history;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import plumbline.finding.Finding;
import plumbline.finding.Severity;

/**
 * A process that keeps many runs: says the name of each behind its end, so that whoever kills it
 * knows what it had done.
 */
final class RunWriter {
  static final Instant START = Instant.parse("2026-01-01T00:00:00Z");

  private RunWriter() {}

  /** Arguments: folder, how many runs, findings in each, a number that tells processes apart. */
  public static void main(String[] args) throws IOException {
    RunFolder folder = new RunFolder(Path.of(args[0]));
    int writer = Integer.parseInt(args[3]);
    for (int i = 0; i < Integer.parseInt(args[1]); i++) {
      // All processes say the same moments.
      Instant at = START.plusSeconds(i);
      List<Finding> findings = new ArrayList<>(Runs.findings(Integer.parseInt(args[2])));
      findings.add(Runs.finding(1000 + writer, 1, Severity.BREAKS, 231));
      String text = Runs.json(at, findings);
      try {
        folder.keep(at, text);
        System.out.println("kept " + RunName.of(at, text));
      } catch (IOException e) {
        System.out.println("failed " + e.getMessage());
      }
      System.out.flush();
    }
  }
}

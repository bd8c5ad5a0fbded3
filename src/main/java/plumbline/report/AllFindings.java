package plumbline.report;

import java.util.List;
import java.util.stream.Stream;
import plumbline.finding.Finding;
import plumbline.finding.ResultOrder;
import plumbline.result.FollowUp;
import plumbline.result.Result;

/** The findings that a result tells, whether they count or not. */
final class AllFindings {
  private AllFindings() {}

  /** Those that count, waived ones, cleared and unchecked ones, by switch, port, rule, id. */
  static List<Finding> of(Result result) {
    if (result.followUp().equals(FollowUp.NONE)) {
      return result.findings();
    }
    return Stream.of(
            result.findings().stream(),
            result.followUp().accepted().stream().flatMap(one -> one.waived().stream()),
            result.followUp().past().stream().flatMap(one -> one.gone().stream()))
        .flatMap(some -> some)
        .sorted(ResultOrder.BY_PLACE)
        .toList();
  }
}

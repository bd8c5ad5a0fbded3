package plumbline.finding;

import java.util.Comparator;
import plumbline.port.PortName;

/** The order in which results list findings: by switch, port (numeric), rule, id. */
public final class ResultOrder {
  /** That order. */
  public static final Comparator<Finding> BY_PLACE =
      Comparator.comparing(Finding::switchName)
          .thenComparing(
              finding -> finding.portOrder().orElse(null),
              Comparator.nullsFirst(Comparator.<PortName>naturalOrder()))
          .thenComparing(Finding::rule)
          .thenComparing(Finding::id);

  private ResultOrder() {}
}

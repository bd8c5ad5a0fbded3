package plumbline.audit;

import java.util.List;

/** The audit. */
public final class Audit {
  private Audit() {}

  /** Holds effective settings against the design. */
  public static AuditOutcome run(AuditInput input) {
    return new AuditOutcome(List.of(), List.of(), List.of());
  }
}

package plumbline.effective;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import plumbline.port.PortName;
import plumbline.port.PortNames.Reading;
import plumbline.statement.Context;
import plumbline.statement.Form;
import plumbline.statement.Statement;
import plumbline.statement.SwitchCommand;
import plumbline.statement.SwitchText;

/**
 * Says whether a text names more ports than any switch has: all that is worked out of a port is
 * kept, and memory ends somewhere.
 */
public final class SizeLimit {
  /** A large chassis has some thousand ports, and no more than 4094 VLAN interfaces. */
  static final int MAX_PORTS = 20_000;

  /** Lines under ranges count once for each port: a hundred lines for each of the most ports. */
  static final long MAX_LINES = 100L * MAX_PORTS;

  private SizeLimit() {}

  /** Why a text is not worked out, a clause such as {@code names more than ...}. */
  public static Optional<String> exceeded(SwitchText text) {
    Set<PortName> ports = new HashSet<>();
    long lines = 0;
    int open = 0;
    for (Statement statement : text.statements()) {
      if (statement.command() instanceof SwitchCommand.Interface header) {
        List<PortName> names =
            header.ports() instanceof Reading.Ports named ? named.names() : List.of();
        open = statement.form() == Form.SET ? names.size() : 0;
        ports.addAll(names);
      } else if (statement.context() == Context.PORT) {
        lines += open;
      }
      if (ports.size() > MAX_PORTS) {
        return Optional.of("names more than 20,000 ports in one switch");
      }
      if (lines > MAX_LINES) {
        return Optional.of("has port ranges that repeat its lines more than 2,000,000 times");
      }
    }
    return Optional.empty();
  }
}

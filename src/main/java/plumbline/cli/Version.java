package plumbline.cli;

import java.util.Optional;
import picocli.CommandLine.IVersionProvider;

/** The program's own version, as the distribution's manifest says it. */
final class Version implements IVersionProvider {
  /** The version, or {@code development} where classes run without their jar. */
  static String number() {
    return Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
        .orElse("development");
  }

  @Override
  public String[] getVersion() {
    return new String[] {"plumbline " + number()};
  }
}

package plumbline.waiver;

import java.util.Optional;
import java.util.Set;
import plumbline.port.PortName;

/** What a run knows beside its findings, as far as waivers ask for it. */
public interface Surroundings {
  /** Something of which a rule said that it differs, or that the text does not decide it. */
  @FunctionalInterface
  interface Open {
    /** Takes one. */
    boolean is(
        String rule, String switchName, String port, Optional<PortName> name, String subject);
  }

  /** Names of the switches of the design. */
  Set<String> switches();

  /** Whether all of a switch was audited. */
  boolean isAudited(String switchName);

  /** Ids of the rules that were asked. */
  Set<String> asked();

  /** Ids of the rules that the design switches off. */
  Set<String> silent();

  /** Whether there is such a thing, told as a finding of its own or not. */
  boolean hasOpen(Open such);
}

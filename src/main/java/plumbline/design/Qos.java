package plumbline.design;

import java.util.Optional;

/**
 * What a role asks of marking.
 *
 * @param trust {@code none}, {@code cos} or {@code dscp}; empty where policies are named
 * @param policyIn policy for received frames
 * @param policyOut policy for sent frames
 */
public record Qos(Optional<String> trust, Optional<String> policyIn, Optional<String> policyOut) {}

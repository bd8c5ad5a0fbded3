package plumbline.judge;

import plumbline.rules.Outcome;
import plumbline.rules.RuleInfo;

/**
 * What a rule said.
 *
 * @param rule the rule
 * @param outcome what it said of one subject
 */
public record Spoken(RuleInfo rule, Outcome outcome) {}

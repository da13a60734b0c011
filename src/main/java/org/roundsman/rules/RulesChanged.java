package org.roundsman.rules;

/** Values of rules were changed and the change is committed. */
public record RulesChanged() {}

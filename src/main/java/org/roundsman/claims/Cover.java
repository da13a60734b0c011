package org.roundsman.claims;

import java.util.List;

/**
 * What is promised for a unit as of today, in words to be kept.
 *
 * @param terms what was sold with it
 * @param status whether it is covered, and until when
 * @param derivation how that was worked out, step by step
 * @param evidence what is at hand to prove the purchase
 */
public record Cover(String terms, String status, List<String> derivation, List<String> evidence) {}

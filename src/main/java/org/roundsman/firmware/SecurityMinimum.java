package org.roundsman.firmware;

import java.util.OptionalLong;

/**
 * The oldest release that has a security fix.
 *
 * @param modelId the one model that it holds for; empty for all models of the line
 * @param model name of that model, or empty
 * @param identifier of the fix, such as the number of an advisory
 */
public record SecurityMinimum(
        long id, long lineId, OptionalLong modelId, String model, String version, String identifier, String note) {}

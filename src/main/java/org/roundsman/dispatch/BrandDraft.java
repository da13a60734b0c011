package org.roundsman.dispatch;

import java.util.List;
import java.util.Optional;

/**
 * How somebody is to be presented, as entered. Faults are named {@code name}, {@code colour}, {@code logo} and {@code lines}.
 *
 * @param colour {@code #rrggbb}, or empty
 * @param logo a new one, at most 256 KiB of PNG or JPEG; empty keeps the one that is there
 * @param dropLogo takes away the one that is there
 * @param lines address and whom to ask, each a line; empty ones are left out
 */
public record BrandDraft(String name, String colour, Optional<byte[]> logo, boolean dropLogo, List<String> lines) {}

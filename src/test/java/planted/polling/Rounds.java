package planted.polling;

import planted.fleet.inner.Private;
import planted.shared.Tidy;

/** Planted: reaches into a sub-package of fleet. That it uses shared is fine. */
public record Rounds(Private[] others, Tidy tidy) {}

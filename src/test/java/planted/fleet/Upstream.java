package planted.fleet;

import planted.polling.Rounds;

/** Planted: fleet is upstream of polling. */
public record Upstream(Rounds rounds) {}

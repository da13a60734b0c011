package planted.shared;

import jakarta.enterprise.inject.Instance;

/** Planted: a plain package knows no container. */
public record WithContainer(Instance<String> names) {}

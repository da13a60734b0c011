package planted.fleet.inner;

/** Sub-package of fleet: nobody else's business. */
public record Private(String name) {}

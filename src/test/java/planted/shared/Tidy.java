package planted.shared;

/** Breaks nothing. */
public record Tidy(String name) {}

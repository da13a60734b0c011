package org.roundsman.measure;

/** Units of the stored figures, with the symbol that pages show. */
public enum Unit {
    MILLISECOND("ms"),
    SECOND("s"),
    PERCENT("%"),
    MEGABIT_PER_SECOND("Mb/s"),
    BIT_PER_SECOND("bit/s"),
    PER_SECOND("/s"),
    DECIBEL_MILLIWATT("dBm"),
    GIGAHERTZ("GHz"),
    MEGAHERTZ("MHz"),
    COUNT("");

    private final String symbol;

    Unit(String symbol) {
        this.symbol = symbol;
    }

    /** The symbol as shown behind a figure; empty for plain counts. */
    public String symbol() {
        return symbol;
    }
}

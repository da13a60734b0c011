package org.roundsman.demo;

/** A radio band, with the number that the invented maker's radio table gives it. */
public enum Band {
    BAND_24(1, 2.4),
    BAND_5(2, 5),
    BAND_6(3, 6);

    private final int code;
    private final double gigahertz;

    Band(int code, double gigahertz) {
        this.code = code;
        this.gigahertz = gigahertz;
    }

    /** Its number in the radio table. */
    public int code() {
        return code;
    }

    /** Its usual name as a figure: 2.4, 5 or 6. */
    public double gigahertz() {
        return gigahertz;
    }
}

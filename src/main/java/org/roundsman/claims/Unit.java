package org.roundsman.claims;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One unit of hardware.
 *
 * @param owner the customer whose it is; empty for the firm's own
 * @param customer name of that customer, or empty
 * @param serial as the maker wrote it; unique per owner without regard to case
 * @param model maker and name, or empty where not known
 * @param outdoor made for outdoors; false where the model is not known
 * @param mains fed from the mains; false where the model is not known
 * @param mac base address, or empty
 * @param fate what became of it, where it neither stands anywhere nor lies in store
 * @param knownSince when it was first read or entered
 */
public record Unit(
        long id,
        OptionalLong owner,
        String customer,
        String serial,
        OptionalLong modelId,
        String model,
        boolean outdoor,
        boolean mains,
        String mac,
        Optional<Fate> fate,
        Instant knownSince) {

    /** With its model, as a person names it. */
    public String words() {
        return (model.isEmpty() ? "unit" : model) + ", serial number " + serial;
    }
}

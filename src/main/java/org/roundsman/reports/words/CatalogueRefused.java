package org.roundsman.reports.words;

import java.util.Map;

/** A catalogue is not used, since a report made with it would have holes. */
final class CatalogueRefused extends Exception {

    private static final long serialVersionUID = 1L;

    /** @param faults what is wrong, by key */
    CatalogueRefused(Map<String, String> faults) {
        super(faults.toString());
    }
}

package org.roundsman.discovery.run;

import java.util.List;

/** Port: opens the credentials that a sweep tries. */
public interface KeyRing {

    /**
     * What could be opened, in the order asked; credentials that are not there any more are left out.
     *
     * @param remark about credentials that could not be opened, or empty
     */
    record Opened(List<Key> keys, String remark) {}

    Opened open(List<Long> credentialIds);
}

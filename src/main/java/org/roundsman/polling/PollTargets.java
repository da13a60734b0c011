package org.roundsman.polling;

import java.util.List;
import java.util.Optional;

/** Which devices to watch. Asked at start and whenever the fleet changed. */
public interface PollTargets {

    /** Every device that is not paused. */
    List<PollTarget> watched();

    /** One device, paused or not. */
    Optional<PollTarget> find(long deviceId);
}

package org.roundsman.web.fleet;

import jakarta.ws.rs.core.MultivaluedMap;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.firmware.FirmwareStatus;
import org.roundsman.warranty.CoverStatus;

/** Which flags the fleet view is cut to; both where both are chosen. */
record FlagChoice(Optional<FirmwareStatus> firmware, Optional<CoverStatus> cover) {

    static final FlagChoice NONE = new FlagChoice(Optional.empty(), Optional.empty());

    static FlagChoice of(MultivaluedMap<String, String> parameters) {
        return new FlagChoice(
                choice(FirmwareStatus.values(), parameters.getFirst("firmware")),
                choice(CoverStatus.values(), parameters.getFirst("warranty")));
    }

    private static <E extends Enum<E>> Optional<E> choice(E[] all, String key) {
        return Arrays.stream(all).filter(one -> key(one).equals(key)).findFirst();
    }

    /** What stands in the address, such as {@code ends-within-30}. */
    static String key(Enum<?> status) {
        return status.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    boolean none() {
        return firmware.isEmpty() && cover.isEmpty();
    }

    /** The parts of an address. */
    List<String> parts() {
        return java.util.stream.Stream.concat(
                        firmware.map(status -> "firmware=" + key(status)).stream(),
                        cover.map(status -> "warranty=" + key(status)).stream())
                .toList();
    }

    List<Filter.Choice> firmwareChoices() {
        return Arrays.stream(FirmwareStatus.values())
                .map(status -> new Filter.Choice(key(status), status.word(), firmware.equals(Optional.of(status))))
                .toList();
    }

    List<Filter.Choice> coverChoices() {
        return Arrays.stream(CoverStatus.values())
                .map(status -> new Filter.Choice(key(status), status.word(), cover.equals(Optional.of(status))))
                .toList();
    }
}

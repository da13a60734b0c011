package org.roundsman.fleet;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * How a model is built.
 *
 * @param radios 0 to 8; 0 where it has none or that is not known
 * @param streams spatial streams of the strongest radio, 1 to 16; null where not known
 * @param bands in GHz between commas, ascending, such as {@code 2.4,5}; empty where not known
 * @param antenna {@code internal}, {@code external} (connectors), or empty where not known
 * @param poeClass class 0 to 8 of IEEE 802.3; null for mains or not known
 * @param mains fed from the mains; never together with a class
 * @param mount what holds it, such as {@code ceiling rail}; empty where not known
 */
public record ModelBuild(
        int radios,
        Integer streams,
        String bands,
        String antenna,
        boolean outdoor,
        Integer poeClass,
        boolean mains,
        String mount) {

    /** Nothing is known. */
    public static final ModelBuild UNKNOWN = new ModelBuild(0, null, "", "", false, null, false, "");

    /** In which access points of today work (IEEE 802.11), in GHz, ascending. */
    public static final List<String> BANDS = List.of("2.4", "5", "6", "60");

    /** What the antenna may be, besides not known. */
    public static final List<String> ANTENNAS = List.of("internal", "external");

    static ModelBuild of(Model model) {
        return new ModelBuild(
                model.radios,
                model.streams == null ? null : model.streams.intValue(),
                model.bands,
                model.antenna,
                model.outdoor,
                model.poeClass == null ? null : model.poeClass.intValue(),
                model.mains,
                model.mount);
    }

    /**
     * Bands as a person writes them, as they are kept: without spaces and repeats, those we know in ascending order. What is no
     * band stays, to be refused.
     */
    public static String plainBands(String written) {
        Set<String> parts = Arrays.stream(
                        written.toLowerCase(Locale.ROOT).replace("ghz", "").split("[,;/\\s]+"))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.toCollection(java.util.LinkedHashSet::new));
        return parts.stream()
                .sorted(java.util.Comparator.comparingInt(
                        part -> BANDS.contains(part) ? BANDS.indexOf(part) : BANDS.size()))
                .collect(Collectors.joining(","));
    }

    void check(InputCheck check, DeviceKind kind) {
        check.range("radios", radios, 0, 8);
        check.range("streams", streams, 1, 16);
        boolean known = bands.isEmpty() || BANDS.containsAll(List.of(bands.split(",")));
        check.that("bands", known, "bands in GHz between commas, out of " + String.join(", ", BANDS));
        check.that(
                "antenna",
                antenna.isEmpty() || ANTENNAS.contains(antenna),
                "internal, external, or leave it empty where not known");
        check.range("poeClass", poeClass, 0, 8);
        check.that("mains", !(mains && poeClass != null), "either fed from the mains or by a PoE class, not both");
        check.text("mount", mount, 0, 120);
        if (kind != null && kind != DeviceKind.ACCESS_POINT) {
            String fault = "a " + kind.word() + " has no radio; leave it empty";
            check.that("radios", radios == 0, fault);
            check.that("streams", streams == null, fault);
            check.that("bands", bands.isEmpty(), fault);
            check.that("antenna", antenna.isEmpty(), fault);
        }
    }

    void fill(Model model) {
        model.radios = (short) radios;
        model.streams = streams == null ? null : streams.shortValue();
        model.bands = bands;
        model.antenna = antenna;
        model.outdoor = outdoor;
        model.poeClass = poeClass == null ? null : poeClass.shortValue();
        model.mains = mains;
        model.mount = mount.strip();
    }
}

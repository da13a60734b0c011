package org.roundsman.web.api;

import java.util.stream.IntStream;

/**
 * An operation as the description of the API names it.
 *
 * @param path with variables in braces
 * @param tag kind of thing that it works on
 */
record DescribedOperation(String method, String path, String tag, String summary) {

    /** Whether an address is one of this operation's. */
    boolean isAt(String address) {
        String[] wanted = path.split("/");
        String[] given = address.split("/");
        return wanted.length == given.length
                && IntStream.range(0, wanted.length).allMatch(i -> variable(wanted[i]) || wanted[i].equals(given[i]));
    }

    /** The more of them an address has in common with the path, the nearer it is to this operation. */
    long fixedParts() {
        return IntStream.range(0, path.split("/").length)
                .filter(i -> !variable(path.split("/")[i]))
                .count();
    }

    private static boolean variable(String part) {
        return part.startsWith("{");
    }
}

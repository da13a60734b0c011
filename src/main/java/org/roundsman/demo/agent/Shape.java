package org.roundsman.demo.agent;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

/**
 * The variables that devices of one shape serve, in the order of their names. Shared by all such devices. Immutable and
 * thread-safe.
 */
final class Shape {

    /** How one variable's value is written for a device. */
    @FunctionalInterface
    interface Value {
        /** Writes the value with its tag, or nothing at all where the device has none now. */
        void write(AgentState state, BerWriter out);
    }

    private final int[][] names;
    private final byte[][] encoded;
    private final int[] objectLengths;
    private final Value[] values;

    private Shape(int size) {
        names = new int[size][];
        encoded = new byte[size][];
        objectLengths = new int[size];
        values = new Value[size];
    }

    int size() {
        return names.length;
    }

    byte[] encodedName(int index) {
        return encoded[index];
    }

    Value value(int index) {
        return values[index];
    }

    /** Where exactly that name stands; otherwise the place of the first greater one, as {@code -place - 1}. */
    int find(int[] name, int length, int guess) {
        if (guess < names.length && compare(names[guess], name, length) == 0) {
            return guess;
        }
        int low = 0;
        int high = names.length - 1;
        while (low <= high) {
            int middle = low + high >>> 1;
            int order = compare(names[middle], name, length);
            if (order == 0) {
                return middle;
            }
            if (order < 0) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return -low - 1;
    }

    /** Whether the name lies within an object served here: then only the instance is missing (RFC 3416, 4.2.1). */
    boolean knowsObject(int[] name, int length, int place) {
        return within(name, length, place) || within(name, length, place - 1);
    }

    private boolean within(int[] name, int length, int index) {
        if (index < 0 || index >= names.length || length < objectLengths[index]) {
            return false;
        }
        int count = objectLengths[index];
        return Arrays.equals(names[index], 0, count, name, 0, count);
    }

    private static int compare(int[] mine, int[] name, int length) {
        int common = Math.min(mine.length, length);
        for (int i = 0; i < common; i++) {
            if (mine[i] != name[i]) {
                return Integer.compareUnsigned(mine[i], name[i]);
            }
        }
        return mine.length - length;
    }

    /** All variables of this shape and of another one that shares no name with it. */
    Shape with(Shape other) {
        Shape both = new Shape(size() + other.size());
        int mine = 0;
        int its = 0;
        for (int i = 0; i < both.size(); i++) {
            boolean own = its == other.size()
                    || mine < size() && compare(names[mine], other.names[its], other.names[its].length) < 0;
            if (own) {
                both.take(i, this, mine++);
            } else {
                both.take(i, other, its++);
            }
        }
        return both;
    }

    private void take(int place, Shape from, int index) {
        names[place] = from.names[index];
        encoded[place] = from.encoded[index];
        objectLengths[place] = from.objectLengths[index];
        values[place] = from.values[index];
    }

    /** Collects variables in any order. */
    static final class Builder {

        private record Variable(int objectLength, Value value) {}

        private final Map<int[], Variable> variables = new TreeMap<>((a, b) -> compare(a, b, b.length));

        /** Adds one instance of an object. */
        Builder add(String object, String instance, Value value) {
            int[] head = Names.numbers(object);
            variables.put(Names.numbers(object + "." + instance), new Variable(head.length, value));
            return this;
        }

        /** Adds one instance of a column of a table's entry. */
        Builder add(int[] entry, int column, int[] instance, Value value) {
            int[] name = Arrays.copyOf(entry, entry.length + 1 + instance.length);
            name[entry.length] = column;
            System.arraycopy(instance, 0, name, entry.length + 1, instance.length);
            variables.put(name, new Variable(entry.length + 1, value));
            return this;
        }

        Shape build() {
            Shape shape = new Shape(variables.size());
            int i = 0;
            for (Map.Entry<int[], Variable> entry : variables.entrySet()) {
                shape.names[i] = entry.getKey();
                shape.encoded[i] = Names.encoded(entry.getKey());
                shape.objectLengths[i] = entry.getValue().objectLength();
                shape.values[i++] = entry.getValue().value();
            }
            return shape;
        }
    }
}

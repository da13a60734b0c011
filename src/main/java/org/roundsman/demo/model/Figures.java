package org.roundsman.demo.model;

/** What a device would show at one moment, as its agent serves it. Filled again and again; one thread at a time. */
public final class Figures {

    /** Percent. */
    public int cpu;
    /** Percent. */
    public int memory;
    /** By radio, from 0. */
    public final boolean[] on;

    public final int[] clients;
    /** Of these clients, those on the guest network. */
    public final int[] guests;
    /** 0 to 255, as in the BSS Load element of IEEE 802.11. */
    public final int[] utilisation;
    /** dBm. */
    public final int[] noise;

    /** Mb/s of the uplink port. */
    public int portSpeed;

    public Figures(int radios) {
        on = new boolean[radios];
        clients = new int[radios];
        guests = new int[radios];
        utilisation = new int[radios];
        noise = new int[radios];
    }

    public int allClients() {
        int sum = 0;
        for (int count : clients) {
            sum += count;
        }
        return sum;
    }
}

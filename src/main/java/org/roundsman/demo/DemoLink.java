package org.roundsman.demo;

/**
 * One cable between two devices of a site. Ports are the numbers on the front plate, from 1.
 *
 * @param below number of the device farther from the gateway
 * @param belowPort its port
 * @param above number of the device nearer to the gateway
 * @param abovePort its port
 * @param feed where the device below gets its power from
 */
public record DemoLink(int below, int belowPort, int above, int abovePort, PowerFeed feed) {

    /** The device at the other end, by number. */
    public int other(DemoDevice end) {
        return end.number() == below ? above : below;
    }

    /** The port at the end of that device. */
    public int portOf(DemoDevice end) {
        return end.number() == below ? belowPort : abovePort;
    }

    /** The port at the other end. */
    public int portAcross(DemoDevice end) {
        return end.number() == below ? abovePort : belowPort;
    }
}

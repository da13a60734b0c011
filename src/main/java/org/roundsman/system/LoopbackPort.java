package org.roundsman.system;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;

/** A TCP port on 127.0.0.1 that stays the same from start to start where it can. */
final class LoopbackPort {

    private LoopbackPort() {}

    /**
     * The wished port, else the one that the file remembers, else a free one; remembered in the file.
     *
     * @param wished a port, or 0 for no wish
     * @throws IOException when the wished one is in use
     */
    static int choose(Path memory, int wished) throws IOException {
        int port = wished != 0 ? wished : rememberedOrFree(memory);
        if (!isFree(port)) {
            throw new IOException("port " + port + " on 127.0.0.1 is in use; change roundsman.database.embedded-port");
        }
        Files.writeString(memory, port + "\n");
        return port;
    }

    private static int rememberedOrFree(Path memory) throws IOException {
        String text = Files.exists(memory) ? Files.readString(memory).strip() : "";
        int remembered = text.matches("\\d{1,5}") ? Integer.parseInt(text) : 0;
        return isFree(remembered) ? remembered : anyFree();
    }

    private static boolean isFree(int port) {
        if (port < 1 || port > 0xFFFF) {
            return false;
        }
        try (ServerSocket socket = new ServerSocket()) {
            socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private static int anyFree() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }
}

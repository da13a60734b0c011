package org.roundsman.mail;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLServerSocket;

/**
 * TLS in front of a plain server on loopback, with the key of one file. The mail server for tests keeps the first key that any
 * test of the process gave it.
 */
final class TlsFront implements AutoCloseable {

    private final SSLServerSocket door;
    private final int behind;

    TlsFront(Path store, String password, int behind) throws IOException, GeneralSecurityException {
        this.behind = behind;
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream file = Files.newInputStream(store)) {
            keys.load(file, password.toCharArray());
        }
        KeyManagerFactory managers = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        managers.init(keys, password.toCharArray());
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(managers.getKeyManagers(), null, null);
        door = (SSLServerSocket)
                context.getServerSocketFactory().createServerSocket(0, 5, InetAddress.getByName("127.0.0.1"));
        background(this::accept);
    }

    int port() {
        return door.getLocalPort();
    }

    private void accept() throws IOException {
        while (!door.isClosed()) {
            Socket outside = door.accept();
            Socket inside = new Socket("127.0.0.1", behind);
            background(() -> pass(outside, inside));
            background(() -> pass(inside, outside));
        }
    }

    private static void pass(Socket from, Socket to) throws IOException {
        try (from;
                to) {
            from.getInputStream().transferTo(to.getOutputStream());
        }
    }

    private interface Work {
        void run() throws IOException;
    }

    /** A connection that breaks off ends its two threads, and closing the door the third: both are expected here. */
    private static void background(Work work) {
        Thread thread = new Thread(
                () -> {
                    try {
                        work.run();
                    } catch (IOException e) {
                        Thread.currentThread().interrupt();
                    }
                },
                "tls-front");
        thread.setDaemon(true);
        thread.start();
    }

    @Override
    public void close() throws IOException {
        door.close();
    }
}

package org.roundsman.mail;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** An SMTP server for one conversation at a time, which does one thing otherwise than a good one. */
public final class ScriptedSmtp implements AutoCloseable {

    private final ServerSocket socket = new ServerSocket(0, 5, InetAddress.getByName("127.0.0.1"));
    private final String at;
    private final String reply;

    private ScriptedSmtp(String at, String reply) throws IOException {
        this.at = at;
        this.reply = reply;
        Thread thread = new Thread(this::serve, "scripted-smtp");
        thread.setDaemon(true);
        thread.start();
    }

    /** Answers lines that begin so with that reply. */
    public static ScriptedSmtp answering(String begin, String reply) throws IOException {
        return new ScriptedSmtp(begin, reply);
    }

    /** Says nothing more after a line that begins so. */
    public static ScriptedSmtp silentAfter(String begin) throws IOException {
        return new ScriptedSmtp(begin, "");
    }

    public int port() {
        return socket.getLocalPort();
    }

    private void serve() {
        while (!socket.isClosed()) {
            try (Socket client = socket.accept()) {
                talk(client);
            } catch (IOException e) {
                // the client hung up, or the test is over
            }
        }
    }

    private void talk(Socket client) throws IOException {
        BufferedReader in =
                new BufferedReader(new InputStreamReader(client.getInputStream(), StandardCharsets.US_ASCII));
        OutputStream out = client.getOutputStream();
        say(out, "220 scripted.example");
        boolean data = false;
        for (String line = in.readLine(); line != null; line = in.readLine()) {
            boolean odd = data ? at.equals(".") && line.equals(".") : line.startsWith(at);
            if (odd && !reply.isEmpty()) {
                say(out, reply);
            } else if (!odd && (!data || line.equals("."))) {
                say(out, line.equals("DATA") ? "354 go on" : "250 fine");
            }
            data = line.equals("DATA") || data && !line.equals(".");
        }
    }

    private static void say(OutputStream out, String line) throws IOException {
        out.write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
        out.flush();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}

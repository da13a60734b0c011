package org.roundsman.notices.send;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;

/**
 * One POST to a webhook's receiver over HTTP/1.1 (RFC 9112), on a connection of its own to the address that was judged. Only
 * the status of the answer counts: redirects are not followed, and of the rest no more than a few kilobytes are read. Blocks
 * no longer than the time given. Thread-safe.
 */
public final class WebhookPost {

    private static final int MOST_READ = 8 * 1024;
    private static final Pattern STATUS = Pattern.compile("HTTP/1\\.[01] (\\d{3})(?: ([^\\r\\n]{0,100}))?");
    private static final int GONE = 410;

    private final Duration longest;
    private final boolean localAllowed;

    public WebhookPost(Duration longest, boolean localAllowed) {
        this.longest = longest;
        this.localAllowed = localAllowed;
    }

    /**
     * Sends; returns once the receiver has answered with a status from 200 to 299.
     *
     * @throws SendFailure in any other case
     */
    public void send(Target target, Map<String, String> headers, byte[] body) throws SendFailure {
        long until = System.nanoTime() + longest.toNanos();
        InetAddress address = target.resolve(localAllowed);
        boolean written = false;
        try (Socket plain = new Socket()) {
            plain.connect(new InetSocketAddress(address, target.port()), left(until));
            plain.setSoTimeout(left(until));
            try (Socket socket = target.secure() ? secured(plain, target) : plain) {
                written = true;
                socket.getOutputStream().write(request(target, headers, body));
                socket.getOutputStream().flush();
                judge(status(socket, until));
            }
        } catch (IOException e) {
            throw failed(e, written);
        }
    }

    private SendFailure failed(IOException e, boolean written) {
        String words = e instanceof SocketTimeoutException
                ? "no answer within " + longest.toSeconds() + " s"
                : "the connection failed: " + e.getMessage();
        return written ? SendFailure.uncertain(words, e) : SendFailure.passing(words, e);
    }

    private static Socket secured(Socket plain, Target target) throws IOException {
        SSLSocketFactory factory = (SSLSocketFactory) SSLSocketFactory.getDefault();
        SSLSocket socket = (SSLSocket) factory.createSocket(plain, target.host(), target.port(), true);
        SSLParameters parameters = socket.getSSLParameters();
        // RFC 9110, section 4.3.4: the certificate must be the host's.
        parameters.setEndpointIdentificationAlgorithm("HTTPS");
        socket.setSSLParameters(parameters);
        socket.startHandshake();
        return socket;
    }

    private static byte[] request(Target target, Map<String, String> headers, byte[] body) throws IOException {
        StringBuilder head = new StringBuilder("POST ").append(target.path()).append(" HTTP/1.1\r\n");
        head.append("Host: ").append(target.authority()).append("\r\n");
        head.append("Content-Type: application/json\r\n");
        head.append("Content-Length: ").append(body.length).append("\r\n");
        head.append("User-Agent: Roundsman\r\n");
        head.append("Connection: close\r\n");
        headers.forEach(
                (name, value) -> head.append(name).append(": ").append(value).append("\r\n"));
        head.append("\r\n");
        ByteArrayOutputStream octets = new ByteArrayOutputStream();
        octets.write(head.toString().getBytes(StandardCharsets.US_ASCII));
        octets.write(body);
        return octets.toByteArray();
    }

    /** The first status that is not of an interim answer (1xx), whose headers say nothing that we need. */
    private static Matcher status(Socket socket, long until) throws IOException, SendFailure {
        StringBuilder line = new StringBuilder();
        InputStream answer = socket.getInputStream();
        for (int read = 0; read < MOST_READ; read++) {
            socket.setSoTimeout(left(until));
            int octet = answer.read();
            if (octet < 0) {
                throw SendFailure.uncertain("the receiver closed the connection without an answer", null);
            }
            if (octet != '\n') {
                line.append((char) octet);
                continue;
            }
            Matcher status = STATUS.matcher(line.toString().strip());
            if (status.matches() && !status.group(1).startsWith("1")) {
                return status;
            }
            if (!status.matches() && !line.isEmpty() && !line.toString().isBlank() && line.indexOf(":") < 0) {
                break;
            }
            line.setLength(0);
        }
        throw SendFailure.uncertain("the answer is no HTTP/1.1", null);
    }

    private static void judge(Matcher status) throws SendFailure {
        int code = Integer.parseInt(status.group(1));
        String words = "the receiver answered " + status.group().replaceFirst("HTTP/1\\.[01] ", "");
        if (code >= 300 && code < 400) {
            throw SendFailure.passing(words + "; redirects are not followed", null);
        }
        if (code < 200 || code >= 400) {
            throw code == GONE ? SendFailure.permanent(words, null) : SendFailure.passing(words, null);
        }
    }

    private static int left(long until) throws SocketTimeoutException {
        long millis = Duration.ofNanos(until - System.nanoTime()).toMillis();
        if (millis <= 0) {
            throw new SocketTimeoutException();
        }
        return (int) Math.min(Integer.MAX_VALUE, millis);
    }
}

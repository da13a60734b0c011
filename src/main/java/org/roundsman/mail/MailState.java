package org.roundsman.mail;

/** Whether mails can be sent, as far as the settings tell. */
public sealed interface MailState {

    /** No server is named. */
    record Off() implements MailState {}

    /** The settings do not go together. */
    record Misset(String why) implements MailState {}

    /** A server is named. */
    record Ready(String host, int port, String from) implements MailState {}

    default boolean ready() {
        return this instanceof Ready;
    }
}

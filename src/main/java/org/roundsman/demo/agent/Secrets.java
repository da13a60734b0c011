package org.roundsman.demo.agent;

import org.roundsman.demo.DemoCredential;

/** What an agent checks a v1 or v2c message against. */
final class Secrets {

    private Secrets() {}

    /** The community as octets, or null where the agent takes v3 only. */
    static byte[] community(DemoCredential credential) {
        return credential instanceof DemoCredential.Community one ? AgentState.text(one.community()) : null;
    }
}

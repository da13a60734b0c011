package org.roundsman.boot;

import io.quarkus.runtime.annotations.QuarkusMain;
import java.time.Clock;
import java.util.Arrays;
import org.roundsman.demo.AgentsMain;
import org.roundsman.demo.AgentsNotStarted;
import org.roundsman.snmp.ProfileException;
import org.roundsman.system.SetupException;

/** Where the program starts, in whichever role; see {@link Options#USAGE}. */
@QuarkusMain
public final class Main {

    private Main() {}

    /** Runs the role to its end and ends the process with its status. */
    public static void main(String... arguments) throws InterruptedException {
        if (Arrays.asList(arguments).contains("--help")) {
            say(Options.USAGE);
            return;
        }
        int status;
        try {
            status = run(Options.parse(arguments));
        } catch (SetupException e) {
            sayWhy(e);
            status = e.fault().exitStatus();
        }
        System.exit(status);
    }

    private static int run(Options options) throws InterruptedException {
        if (options.role() == Role.AGENTS) {
            AgentsMain.main(options.others().toArray(String[]::new));
            return 0;
        }
        System.setProperty("java.util.logging.manager", "org.jboss.logmanager.LogManager");
        StartSettings settings = StartSettings.from(options);
        return options.role() == Role.ROTATE_KEY ? rotateKey(settings) : new Service(settings, Clock.systemUTC()).run();
    }

    private static int rotateKey(StartSettings settings) {
        try {
            return new KeyCommand(settings, Clock.systemUTC()).run();
        } catch (SetupException e) {
            say("\nThe change of the key did not come to its end.\n" + e.getMessage() + "\n");
            return e.fault().exitStatus();
        }
    }

    /**
     * Says why the program ends, if there is a failure. The container closes the log before a failed start is reported,
     * so that this goes past the log: the message alone where it was written for a person, else all there is.
     */
    static void sayWhy(Throwable failure) {
        if (failure == null) {
            return;
        }
        say("\nRoundsman does not start.");
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SetupException
                    || cause instanceof AgentsNotStarted
                    || cause instanceof ProfileException) {
                say(cause.getMessage() + "\n");
                return;
            }
        }
        failure.printStackTrace();
    }

    /** Says something to the person at the terminal, before there is a log or after it has gone. */
    static void say(String text) {
        System.err.println(text);
    }
}

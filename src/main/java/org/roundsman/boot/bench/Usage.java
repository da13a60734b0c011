package org.roundsman.boot.bench;

import java.time.Duration;
import java.util.stream.Stream;

/**
 * CPU time used so far by the parts of a measurement.
 *
 * @param poller this process
 * @param database the PostgreSQL processes below this one
 * @param agents the process that runs the invented agents, zero when it cannot be found
 */
record Usage(Duration poller, Duration database, Duration agents) {

    static Usage now() {
        ProcessHandle self = ProcessHandle.current();
        return new Usage(
                cpu(self),
                self.descendants().map(Usage::cpu).reduce(Duration.ZERO, Duration::plus),
                agentProcesses().map(Usage::cpu).reduce(Duration.ZERO, Duration::plus));
    }

    private static Stream<ProcessHandle> agentProcesses() {
        return ProcessHandle.allProcesses().filter(process -> process.info()
                .arguments()
                .map(arguments -> Stream.of(arguments).anyMatch("--role=agents"::equals))
                .orElse(false));
    }

    private static Duration cpu(ProcessHandle process) {
        return process.info().totalCpuDuration().orElse(Duration.ZERO);
    }

    Usage since(Usage before) {
        return new Usage(poller.minus(before.poller), database.minus(before.database), agents.minus(before.agents));
    }
}

package org.roundsman.web.api;

/** Ends a request with a problem. */
final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    ProblemException(Problem problem) {
        super(problem.title() + ": " + problem.detail());
        this.problem = problem;
    }

    ProblemException(ProblemKind kind, String detail) {
        this(Problem.of(kind, detail));
    }

    Problem problem() {
        return problem;
    }
}

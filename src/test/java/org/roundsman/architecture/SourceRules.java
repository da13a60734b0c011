package org.roundsman.architecture;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileManager;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/** Limits on the size and the names of source code, measured on the tree that the Java compiler itself parses. */
final class SourceRules {

    static final int LONGEST_METHOD = 40;
    static final int MOST_CONSTRUCTOR_ARGUMENTS = 5;

    private static final Set<String> BANNED_SUFFIXES = Set.of("Impl", "Manager", "Helper", "Utils", "Util");

    private static final JavaCompiler COMPILER = ToolProvider.getSystemJavaCompiler();

    private static final JavaFileManager FILES = COMPILER.getStandardFileManager(null, null, null);

    private SourceRules() {}

    /** The violations in one source file. */
    static List<String> violations(String name, String source, int longestFile) {
        return violations(Map.of(name, source), longestFile);
    }

    /** The violations in source files, by their names: one compiler parses them all, as to start one takes longer than a file. */
    static List<String> violations(Map<String, String> sources, int longestFile) {
        List<String> violations = new ArrayList<>();
        List<Source> files = new ArrayList<>();
        sources.forEach((name, source) -> {
            files.add(new Source(name, source));
            long lines = source.lines().count();
            if (lines > longestFile) {
                violations.add(name + " has " + lines + " lines, more than " + longestFile);
            }
        });
        JavacTask task = (JavacTask) COMPILER.getTask(null, FILES, null, List.of("-proc:none"), null, files);
        SourcePositions positions = Trees.instance(task).getSourcePositions();
        try {
            for (CompilationUnitTree unit : task.parse()) {
                String name = unit.getSourceFile().getName().substring(1);
                new Scanner(name, unit, positions, violations).scan(unit, null);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
        return violations;
    }

    private static final class Scanner extends TreeScanner<Void, Tree.Kind> {
        private final String name;
        private final CompilationUnitTree unit;
        private final SourcePositions positions;
        private final List<String> violations;

        Scanner(String name, CompilationUnitTree unit, SourcePositions positions, List<String> violations) {
            this.name = name;
            this.unit = unit;
            this.positions = positions;
            this.violations = violations;
        }

        @Override
        public Void visitClass(ClassTree type, Tree.Kind around) {
            String simpleName = type.getSimpleName().toString();
            BANNED_SUFFIXES.stream()
                    .filter(simpleName::endsWith)
                    .forEach(suffix ->
                            violations.add(name + ": " + simpleName + " says nothing by ending in " + suffix));
            return super.visitClass(type, type.getKind());
        }

        @Override
        public Void visitMethod(MethodTree method, Tree.Kind around) {
            long lines = line(positions.getEndPosition(unit, method)) - line(start(method)) + 1;
            if (lines > LONGEST_METHOD && !isTableOfCases(method)) {
                violations.add(
                        name + ": " + method.getName() + " has " + lines + " lines, more than " + LONGEST_METHOD);
            }
            boolean constructor = method.getReturnType() == null && around == Tree.Kind.CLASS;
            if (constructor && method.getParameters().size() > MOST_CONSTRUCTOR_ARGUMENTS) {
                violations.add(name + ": a constructor takes "
                        + method.getParameters().size() + " arguments, more than " + MOST_CONSTRUCTOR_ARGUMENTS);
            }
            return super.visitMethod(method, around);
        }

        /** The cases of a parameterised test: one returned expression without logic, as long as there are cases. */
        private static boolean isTableOfCases(MethodTree method) {
            return method.getReturnType() != null
                    && method.getReturnType().toString().equals("Stream<Arguments>")
                    && method.getBody().getStatements().size() == 1;
        }

        private long start(MethodTree method) {
            return positions.getStartPosition(unit, method.getBody() == null ? method : method.getBody());
        }

        private long line(long position) {
            return unit.getLineMap().getLineNumber(position);
        }
    }

    private static final class Source extends SimpleJavaFileObject {
        private final String text;

        Source(String name, String text) {
            super(URI.create("string:///" + name), JavaFileObject.Kind.SOURCE);
            this.text = text;
        }

        @Override
        public CharSequence getCharContent(boolean ignoreEncodingErrors) {
            return text;
        }
    }
}

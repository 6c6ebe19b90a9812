package org.bayhold.architecture;

import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;

/** The keys of sentences in Java sources, as the compiler's own parser reads them. */
final class SourceKeys extends TreeScanner<@Nullable Void, CompilationUnitTree> {
    /** Which argument of a call to Refusal is the key; what follows it are the sentence's arguments. */
    private static final Map<String, Integer> OF_REFUSAL =
            Map.of("invalid", 1, "notFound", 0, "conflict", 1, "forbidden", 0, "of", 1);
    /** Calls whose argument of this number is a key, and all that follows it the sentence's arguments. */
    private static final Map<String, Integer> OF_PAGES = Map.of("message", 0, "sentence", 0, "say", 0, "done", 1);

    private final Trees trees;
    private final List<KeyUse> uses = new ArrayList<>();
    private final Set<String> literals = new HashSet<>();

    private SourceKeys(Trees trees) {
        this.trees = trees;
    }

    static SourceKeys under(Path folder) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null);
                Stream<Path> paths = Files.walk(folder)) {
            List<Path> sources =
                    paths.filter(path -> path.toString().endsWith(".java")).toList();
            JavacTask task = (JavacTask)
                    compiler.getTask(null, files, null, null, null, files.getJavaFileObjectsFromPaths(sources));
            SourceKeys keys = new SourceKeys(Trees.instance(task));
            task.parse().forEach(unit -> keys.scan(unit, unit));
            return keys;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Every place that is known to ask for a sentence. */
    List<KeyUse> uses() {
        return uses;
    }

    /** Every text in the sources, whatever it is for. */
    Set<String> literals() {
        return literals;
    }

    @Override
    public @Nullable Void visitLiteral(LiteralTree literal, CompilationUnitTree unit) {
        if (literal.getValue() instanceof String text) {
            literals.add(text);
        }
        return super.visitLiteral(literal, unit);
    }

    @Override
    public @Nullable Void visitMethodInvocation(MethodInvocationTree call, CompilationUnitTree unit) {
        List<? extends ExpressionTree> arguments = call.getArguments();
        String method = lastName(call.getMethodSelect());
        if (isOn("Sentence", call.getMethodSelect()) || isOn("Why", call.getMethodSelect())) {
            use(arguments.get(0), arguments.size() - 1, unit);
        } else if (isOn("Refusal", call.getMethodSelect()) && OF_REFUSAL.containsKey(method)) {
            int key = OF_REFUSAL.get(method);
            use(arguments.get(key), arguments.size() - key - 1, unit);
        } else if (method.equals("getMessage") && !arguments.isEmpty()) {
            use(arguments.get(0), 0, unit);
        } else if (arguments.size() > OF_PAGES.getOrDefault(method, Integer.MAX_VALUE)) {
            int key = OF_PAGES.get(method);
            use(arguments.get(key), arguments.size() - key - 1, unit);
        }
        return super.visitMethodInvocation(call, unit);
    }

    @Override
    public @Nullable Void visitNewClass(NewClassTree made, CompilationUnitTree unit) {
        List<? extends ExpressionTree> arguments = made.getArguments();
        if (lastName(made.getIdentifier()).equals("Reason")
                && arguments.size() == 3
                && arguments.get(2) instanceof MethodInvocationTree list) {
            use(arguments.get(1), list.getArguments().size(), unit);
        } else if (lastName(made.getIdentifier()).equals("Sentence")
                && arguments.get(1) instanceof MethodInvocationTree list) {
            use(arguments.get(0), list.getArguments().size(), unit);
        }
        return super.visitNewClass(made, unit);
    }

    private void use(ExpressionTree key, int arguments, CompilationUnitTree unit) {
        if (key instanceof LiteralTree literal && literal.getValue() instanceof String text) {
            uses.add(new KeyUse(text, arguments, where(key, unit)));
        } else if (key instanceof BinaryTree joined) {
            use(joined.getLeftOperand(), arguments, unit);
        } else if (key instanceof ParenthesizedTree inner) {
            use(inner.getExpression(), arguments, unit);
        } else if (key instanceof ConditionalExpressionTree either) {
            use(either.getTrueExpression(), arguments, unit);
            use(either.getFalseExpression(), arguments, unit);
        }
    }

    private String where(Tree tree, CompilationUnitTree unit) {
        long line = unit.getLineMap().getLineNumber(trees.getSourcePositions().getStartPosition(unit, tree));
        return Path.of(unit.getSourceFile().toUri()).getFileName() + ":" + line;
    }

    private static boolean isOn(String type, ExpressionTree select) {
        return select instanceof MemberSelectTree member
                && lastName(member.getExpression()).equals(type);
    }

    private static String lastName(Tree select) {
        if (select instanceof MemberSelectTree member) {
            return member.getIdentifier().toString();
        }
        return select instanceof IdentifierTree name ? name.getName().toString() : "";
    }
}

package org.demebook.consent;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jboss.logmanager.formatters.PatternFormatter;

/** Every line that is logged at INFO or above while it is open, with what was thrown and why. */
final class LogWatch extends Handler implements AutoCloseable {
    private static final PatternFormatter FORM = new PatternFormatter("%p %c %s%e");

    private final Queue<String> lines = new ConcurrentLinkedQueue<>();

    LogWatch() {
        setLevel(Level.INFO);
        Logger.getLogger("").addHandler(this);
    }

    /** The lines since the last time. */
    String read() {
        var text = new StringBuilder();
        for (var line = lines.poll(); line != null; line = lines.poll()) {
            text.append(line).append('\n');
        }
        return text.toString();
    }

    @Override
    public void publish(LogRecord told) {
        if (told.getLevel().intValue() < Level.INFO.intValue()) {
            return;
        }
        lines.add(FORM.format(told));
    }

    @Override
    public void flush() {}

    @Override
    public void close() {
        Logger.getLogger("").removeHandler(this);
    }
}

package org.roundsman.paper;

import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.XRLogger;
import java.util.logging.Level;
import org.jboss.logging.Logger;

/** Sends what the PDF library has to say to the log of the service: warnings and worse, and nothing about its pace. */
final class PaperLog implements XRLogger {

    private static final Logger LOG = Logger.getLogger(PaperLog.class);

    @Override
    public void log(String where, Level level, String message) {
        log(where, level, message, null);
    }

    @Override
    public void log(String where, Level level, String message, Throwable cause) {
        if (level.intValue() >= Level.WARNING.intValue()) {
            LOG.warnf(cause, "Making a PDF: %s", message);
        }
    }

    @Override
    public void setLevel(String logger, Level level) {
        // the level is not the library's to choose
    }

    @Override
    public boolean isLogLevelEnabled(Diagnostic diagnostic) {
        return diagnostic.getLevel().intValue() >= Level.WARNING.intValue();
    }
}

package org.demebook.web.today;

import java.util.List;
import org.demebook.care.CareTaskView;

/**
 * What was done about tasks just now, and can be taken back.
 *
 * @param first as it is now; the others went the same way
 * @param keys of all of them
 */
public record Change(CareTaskView first, List<String> keys) {
    /** An address with more would be too long; they are taken back from the list of what was done. */
    static final int MOST = 30;

    public long count() {
        return keys.size();
    }

    public boolean isOne() {
        return keys.size() == 1;
    }

    public boolean isDone() {
        return first.doneOn() != null;
    }

    public boolean isSilenced() {
        return first.silenced() != null;
    }

    public boolean isMoved() {
        return first.movedFrom() != null;
    }
}

package org.demebook.sheet;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import org.demebook.rest.ShownTo;

/**
 * What a sheet would do to the register.
 *
 * @param rows rows with anything in them, the header not counted
 * @param wouldAdd animals that are not in the register yet; not told apart while there are errors in the header
 * @param alreadyKnown rows about animals that the register knows and that say the same
 * @param errors all of them, shown or not; with any, nothing is imported
 * @param warnings all warnings and notices, shown or not
 * @param findings the first {@value #MOST_SHOWN}, by row
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record Report(int rows, int wouldAdd, int alreadyKnown, int errors, int warnings, List<SheetFinding> findings) {
    static final int MOST_SHOWN = 1000;

    @JsonIgnore
    public boolean isRefused() {
        return errors > 0;
    }
}

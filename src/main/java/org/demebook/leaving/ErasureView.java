package org.demebook.leaving;

import java.util.List;
import org.demebook.rest.ShownTo;

/**
 * What an erasure does, in sentences.
 *
 * @param goes what is taken out for good
 * @param stays what stays in the register, without you
 * @param inTheWay what has to come to its end first, and how; with nothing here it can be done
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record ErasureView(List<String> goes, List<String> stays, List<String> inTheWay) {}

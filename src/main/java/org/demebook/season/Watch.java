package org.demebook.season;

/** Somebody who looks on while a season is solved, and may stop it: the best plan so far is kept. */
@FunctionalInterface
public interface Watch {
    Watch NOBODY = progress -> true;

    /** Called some hundred times, on the solving thread. Returns false to stop. */
    boolean goOn(Progress progress);
}

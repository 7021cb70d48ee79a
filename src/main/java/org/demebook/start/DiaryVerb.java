package org.demebook.start;

import java.io.IOException;

/** What one word of the diary says to the server: one request. */
interface DiaryVerb {
    void tell(DiaryLine line) throws IOException, InterruptedException;
}

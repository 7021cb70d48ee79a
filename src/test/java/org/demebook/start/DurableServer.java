package org.demebook.start;

import org.demebook.start.LocalPostgres.Durability;

/** The same on a database that flushes every commit to the disk, as an operator's does: for figures. */
public class DurableServer extends TestServer {
    @Override
    Durability durability() {
        return Durability.FULL;
    }
}

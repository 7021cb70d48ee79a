package org.demebook.protocol.simulation;

/** The current failed at a node. An error, so that no code which looks after its failures catches it: the world alone does. */
final class PowerCut extends Error {
    private static final long serialVersionUID = 1;

    private final transient SimDisk disk;
    private final SimDisk.Moment moment;

    PowerCut(SimDisk disk, SimDisk.Moment moment) {
        super("power cut", null, false, false);
        this.disk = disk;
        this.moment = moment;
    }

    SimDisk.Moment moment() {
        return moment;
    }

    SimDisk disk() {
        return disk;
    }
}

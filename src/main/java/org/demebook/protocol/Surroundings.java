package org.demebook.protocol;

import java.time.Instant;
import java.util.UUID;

/** What a participant cannot know by itself. */
public interface Surroundings {
    /** By this node's clock. It decides nothing but whether the node's own offers have expired. */
    Instant now();

    /** 32 bytes that nobody can guess. */
    byte[] salt();

    UUID newId();
}

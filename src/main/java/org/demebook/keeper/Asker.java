package org.demebook.keeper;

import java.util.UUID;

/** The keeper who sends a request. */
public record Asker(UUID keeperId, String name, boolean administrator) {}

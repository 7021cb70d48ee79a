package org.demebook.plot;

/** A place on an axis and what is written there. */
public record Tick(double at, String label) {}

package org.demebook.plot;

/** The shape by which points are told apart, beside their colour. */
public enum Mark {
    CIRCLE,
    SQUARE,
    TRIANGLE,
    DIAMOND,
    CROSS,
    STROKE
}

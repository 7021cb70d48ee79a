package org.demebook.care;

/** Which tasks of a list are wanted. */
public enum TaskState {
    OPEN,
    DONE,
    SILENCED
}

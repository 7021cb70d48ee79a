package org.demebook.protocol;

/** Why a well-formed and signed entry has no effect. */
record Fault(Alarm.Kind kind, String sentence) {}

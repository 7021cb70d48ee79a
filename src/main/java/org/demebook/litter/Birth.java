package org.demebook.litter;

import java.util.UUID;
import org.demebook.notation.RoughDate;

/** That a dam had a litter, and when. */
public record Birth(UUID damId, UUID litterId, RoughDate born) {}

package org.demebook.season;

/** What becomes of a season that is to be planned. */
public sealed interface Planned permits SeasonPlan, ImpossibleSeason {}

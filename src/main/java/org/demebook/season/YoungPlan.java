package org.demebook.season;

/**
 * A plan for which the numbers of young were chosen too.
 *
 * @param season with the numbers of young that were chosen; those of females without a litter are what was assumed for them
 * @param planned its plan, with the bound for these numbers: no plan <i>of this season</i> falls below it
 */
public record YoungPlan(Season season, Planned planned) {}

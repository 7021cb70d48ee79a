package org.demebook.census;

import org.demebook.rest.ShownTo;

/**
 * The parameters of disclosure control, for coordinators only.
 *
 * @param fewestKeepers how many keepers have to stand behind a count
 * @param percent p of the p % rule
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record CountRulesView(int fewestKeepers, int percent, long revision) {}

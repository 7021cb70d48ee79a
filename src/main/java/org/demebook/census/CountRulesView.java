package org.demebook.census;

/**
 * The parameters of disclosure control, for coordinators only.
 *
 * @param fewestKeepers how many keepers have to stand behind a count
 * @param percent p of the p % rule
 */
public record CountRulesView(int fewestKeepers, int percent, long revision) {}

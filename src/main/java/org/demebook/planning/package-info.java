/**
 * Which animals should breed next: pairs across collections, what their young would be, how many of them to keep, and
 * why.
 *
 * <p>Computes on what {@code ancestry} has in memory, outside of any transaction, and writes nothing but what somebody said
 * of an animal on hold, what collections state that they can bear, and which pseudonyms were told. Knows where animals live, to
 * tell apart what lives together, and never shows it. Gives no veterinary advice. Doors: {@link org.demebook.planning.Planner},
 * {@link org.demebook.planning.Breeders}, {@link org.demebook.planning.UnnamedPartners}, {@link org.demebook.planning.BreedingHolds}, {@link
 * org.demebook.planning.TermsOfCollections}, and for whoever plans a season {@link org.demebook.planning.SeasonFields}.
 */
@NullMarked
package org.demebook.planning;

import org.jspecify.annotations.NullMarked;

package org.demebook.web.pairing;

import org.demebook.keeper.CollectionView;
import org.demebook.planning.PairingTermsView;

/** A collection with what is stated of it. */
public record CollectionTerms(CollectionView collection, PairingTermsView terms) {}

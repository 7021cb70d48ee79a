package org.demebook.consent;

/** PLACE */
final class SharedPopulation {
    static final String UPLAND = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k";
}

package org.demebook.keeper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import org.junit.jupiter.api.Test;

class HouseholdsTest {
    private static final UUID WREN = new UUID(1, 1);
    private static final UUID INES = new UUID(1, 2);
    private static final UUID DOV = new UUID(1, 3);

    private final Households households = new Households();

    @Test
    void collections_of_different_keepers_are_different_households() {
        households.add(collection(1), WREN);
        households.add(collection(2), INES);

        assertThat(households.byCollection().values()).doesNotHaveDuplicates().hasSize(2);
    }

    @Test
    void collections_that_share_a_keeper_are_one_household_also_through_others() {
        households.add(collection(1), WREN);
        households.add(collection(2), DOV);
        households.add(collection(3), INES);
        households.add(collection(4), WREN);
        households.add(collection(4), DOV);

        var byCollection = households.byCollection();
        assertThat(byCollection).hasSize(4);
        assertThat(byCollection.get(collection(1)))
                .isEqualTo(byCollection.get(collection(2)))
                .isEqualTo(byCollection.get(collection(4)))
                .isNotEqualTo(byCollection.get(collection(3)));
    }

    private static UUID collection(int number) {
        return new UUID(2, number);
    }
}

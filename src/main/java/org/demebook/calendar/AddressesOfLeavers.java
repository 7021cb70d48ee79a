package org.demebook.calendar;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.demebook.keeper.Leaving;

/** The address of a calendar goes with the account. */
@ApplicationScoped
class AddressesOfLeavers implements Leaving {
    @Override
    public void accountGoes(UUID keeperId) {
        CalendarAddress.deleteById(keeperId);
    }
}

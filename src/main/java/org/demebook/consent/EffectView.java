package org.demebook.consent;

import java.util.List;
import java.util.UUID;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.rest.ShownTo;

/**
 * What a grant, or a ready choice, would change: nothing is saved.
 *
 * @param animals how many the collection holds or owns
 * @param lines what is shared with whom, before and after; a recipient, purpose, action and field group that is not there
 *     sees nothing either way. Of an animal in which another collection has a say too, what that has granted counts along
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record EffectView(UUID collection, int animals, List<Line> lines) {
    /**
     * @param animalsBefore of how many animals they may do it now
     * @param animalsAfter of how many they might do it then
     */
    public record Line(
            StatedRecipient recipient,
            Purpose purpose,
            Action action,
            List<FieldGroup> fieldGroups,
            int animalsBefore,
            int animalsAfter) {}
}

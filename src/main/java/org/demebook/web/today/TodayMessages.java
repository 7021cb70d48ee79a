package org.demebook.web.today;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.care.CareKind;

/** Words of the page of today. */
@MessageBundle("today")
public interface TodayMessages {
    @Message("What is to be done")
    String title();

    @Message("Nothing is to be done until {day}.")
    String nothing(String day);

    @Message("Done")
    String done();

    @Message("{days} days late")
    String late(int days);

    @Message
    String kind(CareKind kind);
}

package org.demebook.web.description;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.SexSystem;

/** Words of what a population is. */
@MessageBundle("description")
public interface DescriptionMessages {
    @Message("Change the description")
    String edit();

    @Message("Description of {name}")
    String editTitle(String name);

    @Message("Name")
    String name();

    @Message("Taxon")
    String taxon();

    @Message("Scientific name, as exact as it has to be")
    String taxonHint();

    @Message("Locality")
    String locality();

    @Message("Where the founders come from, as it does among keepers")
    String localityHint();

    @Message("Code")
    String code();

    @Message("Every studbook number begins with it; it stays")
    String codeHint();

    @Message("Reproduction")
    String mode();

    @Message("Sex chromosomes")
    String sexes();

    @Message("Tests before a pairing")
    String tests();

    @Message("One agent a line. With none, the latest test for each agent counts that an animal was ever tested for.")
    String testsHint();

    @Message("the latest for each agent that an animal was ever tested for")
    String noTests();

    @Message("The population")
    String population();

    @Message("Biology in figures")
    String profile();

    @Message(
            "Checks, predictions and tasks reckon with these. Where no source stands they are common practice for small island boas, and no veterinary advice.")
    String profileLede();

    @Message("Figure")
    String figureHead();

    @Message("Value")
    String value();

    @Message("Source")
    String source();

    @Message("common practice, no source")
    String noSource();

    @Message("{days} days")
    String days(String days);

    @Message("Keep")
    String keep();

    @Message("Kept.")
    String kept();

    @Message("The source is {length} characters long; there is room for 500.")
    String longSource(int length);

    @Message
    String group(ProfileFigure.Group group);

    @Message
    String unit(ProfileFigure.Unit unit);

    @Message
    String birthMode(BirthMode mode);

    @Message
    String sexSystem(SexSystem system);

    @Message
    String figure(ProfileFigure figure);
}

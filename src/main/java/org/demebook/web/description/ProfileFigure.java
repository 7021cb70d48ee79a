package org.demebook.web.description;

/** A figure of a population's profile, by its name there. */
public enum ProfileFigure {
    DAYS_FROM_SHED_TO_BIRTH(Group.GESTATION, "gestation.daysFromShedToBirth", Unit.DAYS),
    DAYS_FROM_SHED_TO_BIRTH_AT_LEAST(Group.GESTATION, "gestation.daysFromShedToBirthAtLeast", Unit.DAYS),
    DAYS_FROM_SHED_TO_BIRTH_AT_MOST(Group.GESTATION, "gestation.daysFromShedToBirthAtMost", Unit.DAYS),
    DAYS_FROM_SHED_TO_BIRTH_EARLIEST(Group.GESTATION, "gestation.daysFromShedToBirthEarliest", Unit.DAYS),
    DAYS_FROM_SHED_TO_BIRTH_OVERDUE(Group.GESTATION, "gestation.daysFromShedToBirthOverdue", Unit.DAYS),
    DAYS_FROM_OVULATION_TO_BIRTH(Group.GESTATION, "gestation.daysFromOvulationToBirth", Unit.DAYS),
    DAYS_FROM_OVULATION_TO_BIRTH_AT_LEAST(Group.GESTATION, "gestation.daysFromOvulationToBirthAtLeast", Unit.DAYS),
    DAYS_FROM_OVULATION_TO_BIRTH_AT_MOST(Group.GESTATION, "gestation.daysFromOvulationToBirthAtMost", Unit.DAYS),
    DAYS_FROM_LAYING_TO_HATCHING(Group.GESTATION, "gestation.daysFromLayingToHatching", Unit.DAYS),
    SPREAD_BETWEEN_FEMALES(Group.GESTATION, "gestation.spreadBetweenFemales", Unit.DAYS),
    SPREAD_WITHIN_FEMALE(Group.GESTATION, "gestation.spreadWithinFemale", Unit.DAYS),
    OVA_AT_LEAST(Group.LITTER, "litter.ovaAtLeast", Unit.COUNT),
    OVA_AT_MOST(Group.LITTER, "litter.ovaAtMost", Unit.COUNT),
    NEONATE_MASS_GRAMS(Group.LITTER, "litter.neonateMassGrams", Unit.GRAMS),
    NEONATE_LENGTH_MILLIMETRES(Group.LITTER, "litter.neonateLengthMillimetres", Unit.MILLIMETRES),
    DAYS_OF_SPERM_STORAGE(Group.BREEDING, "breeding.daysOfSpermStorage", Unit.DAYS),
    DAYS_OF_SPERM_STORAGE_USUAL(Group.BREEDING, "breeding.daysOfSpermStorageUsual", Unit.DAYS),
    DAYS_OF_AGE_AT_FIRST_BIRTH(Group.BREEDING, "breeding.daysOfAgeAtFirstBirth", Unit.DAYS),
    DAYS_OF_AGE_AT_FIRST_BIRTH_USUAL(Group.BREEDING, "breeding.daysOfAgeAtFirstBirthUsual", Unit.DAYS),
    DAYS_OF_AGE_TO_BREED(Group.BREEDING, "breeding.daysOfAgeToBreed", Unit.DAYS),
    DAYS_BETWEEN_LITTERS(Group.BREEDING, "breeding.daysBetweenLitters", Unit.DAYS),
    DAYS_BETWEEN_LITTERS_USUAL(Group.BREEDING, "breeding.daysBetweenLittersUsual", Unit.DAYS),
    DAYS_OF_AGE_AT_LAST_LITTER(Group.BREEDING, "breeding.daysOfAgeAtLastLitter", Unit.DAYS),
    DAYS_TO_FIRST_SHED_AT_LEAST(Group.REARING, "rearing.daysToFirstShedAtLeast", Unit.DAYS),
    DAYS_TO_FIRST_SHED_AT_MOST(Group.REARING, "rearing.daysToFirstShedAtMost", Unit.DAYS),
    DAYS_TO_FIRST_SHED_LATE(Group.REARING, "rearing.daysToFirstShedLate", Unit.DAYS),
    DAYS_TO_FIRST_MEAL_AT_LEAST(Group.REARING, "rearing.daysToFirstMealAtLeast", Unit.DAYS),
    DAYS_TO_FIRST_MEAL_AT_MOST(Group.REARING, "rearing.daysToFirstMealAtMost", Unit.DAYS),
    DAYS_BETWEEN_MEALS(Group.REARING, "rearing.daysBetweenMeals", Unit.DAYS),
    SHEDS_TO_LEAVE(Group.REARING, "rearing.shedsToLeave", Unit.COUNT),
    MEALS_TO_LEAVE(Group.REARING, "rearing.mealsToLeave", Unit.COUNT),
    DAYS_OF_AGE_TO_LEAVE(Group.REARING, "rearing.daysOfAgeToLeave", Unit.DAYS),
    DAYS_FROM_MEAL_TO_LEAVE(Group.REARING, "rearing.daysFromMealToLeave", Unit.DAYS),
    DAYS_OF_QUARANTINE(Group.QUARANTINE, "daysOfQuarantine", Unit.DAYS);

    /** What figures are about. */
    public enum Group {
        GESTATION,
        LITTER,
        BREEDING,
        REARING,
        QUARANTINE
    }

    /** What a figure is counted in. */
    public enum Unit {
        DAYS,
        COUNT,
        GRAMS,
        MILLIMETRES
    }

    private final Group group;
    private final String path;
    private final Unit unit;

    ProfileFigure(Group group, String path, Unit unit) {
        this.group = group;
        this.path = path;
        this.unit = unit;
    }

    public Group group() {
        return group;
    }

    /** As the API writes it, such as {@code gestation.daysFromShedToBirth}. */
    public String path() {
        return path;
    }

    public Unit unit() {
        return unit;
    }

    /** The field of the form that holds it. */
    public String field() {
        return "profile." + path;
    }

    /** The field of the form that says where it comes from. */
    public String sourceField() {
        return "source " + path;
    }
}

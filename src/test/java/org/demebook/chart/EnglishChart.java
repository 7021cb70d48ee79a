package org.demebook.chart;

/** The words of the charts in these tests. */
class EnglishChart implements Wording {
    @Override
    public String title(String askedName) {
        return "Ancestry of " + askedName;
    }

    @Override
    public String description(int animals, int rows) {
        return "%d animals in %d rows, the oldest at the top".formatted(animals, rows);
    }

    @Override
    public String female() {
        return "female";
    }

    @Override
    public String male() {
        return "male";
    }

    @Override
    public String sexUnknown() {
        return "sex unknown";
    }

    @Override
    public String dead() {
        return "dead";
    }

    @Override
    public String founder() {
        return "founder";
    }

    @Override
    public String asked() {
        return "asked about";
    }

    @Override
    public String withheld() {
        return "not shown";
    }

    @Override
    public String unknownParent() {
        return "unknown";
    }

    @Override
    public String dam() {
        return "dam";
    }

    @Override
    public String sire() {
        return "sire";
    }

    @Override
    public String possibleSire() {
        return "possible sire";
    }

    @Override
    public String parentsRelated() {
        return "parents related";
    }

    @Override
    public String asAbove() {
        return "as above";
    }
}

package org.roundsman.people;

/** What a person may do. The name is what the account table stores and what pages ask for. */
public enum Role {
    /** Looks after the fleet: sees every customer, edits devices, polls now. */
    TECHNICIAN("technician"),
    /** Looks after customers: sees every customer, edits what a technician edits. */
    ACCOUNT_MANAGER("account manager"),
    /** As the others, and looks after people. */
    OWNER("owner"),
    /** A customer's own person: sees that one customer and changes nothing. */
    VIEWER("viewer");

    /** Names for annotations, which need constants. */
    public static final String TECHNICIAN_ROLE = "TECHNICIAN";

    public static final String ACCOUNT_MANAGER_ROLE = "ACCOUNT_MANAGER";
    public static final String OWNER_ROLE = "OWNER";

    private final String word;

    Role(String word) {
        this.word = word;
    }

    /** The word on pages. */
    public String word() {
        return word;
    }

    /** Whether this role takes, shelves and closes alarms. */
    public boolean actsOnAlarms() {
        return this == TECHNICIAN || this == OWNER;
    }

    /** Whether this role may change customers, sites, devices and credentials. */
    public boolean editsFleet() {
        return this != VIEWER;
    }

    /** Whether this role may plan work, and end and cancel it. */
    public boolean plansWork() {
        return this == TECHNICIAN || this == OWNER;
    }

    /** Whether this role sees what things cost. */
    public boolean seesPrices() {
        return this != VIEWER;
    }

    /** Whether this role may change the catalogue of models: prices, warranty terms, announced dates. */
    public boolean keepsCatalogue() {
        return this == ACCOUNT_MANAGER || this == OWNER;
    }

    /** Whether this role decides which firmware is to run where. */
    public boolean keepsFirmwarePolicy() {
        return this == OWNER;
    }

    /** Whether this role finds reports good, sends them, and says how and to whom they go. */
    public boolean sendsReports() {
        return this == ACCOUNT_MANAGER || this == OWNER;
    }

    /** Whether this role may enter purchases, contracts and their evidence, and open and move claims. */
    public boolean keepsPurchases() {
        return this != VIEWER;
    }
}

package org.roundsman.fleet;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The tables that are imported and exported as CSV, in the order in which they are applied, with their columns. */
public enum TransferTable {
    CUSTOMERS(
            "customers",
            "customer",
            List.of(
                    Column.key("customer", "Name of the customer; rows match by it", "Pebblegate Dental"),
                    Column.of("note", "Anything worth knowing", "Invented example: replace this row"))),
    SITES(
            "sites",
            "site",
            List.of(
                    Column.key("customer", "Name of its customer", "Pebblegate Dental"),
                    Column.key("site", "Name of the site; rows match by customer and site", "Harbour clinic"),
                    Column.key("time_zone", "IANA name of the time zone that its days are counted in", "Europe/Berlin"),
                    Column.of("street", "Street and number", "1 Quay Lane"),
                    Column.of("postcode", "Postcode", "00000"),
                    Column.of("town", "Town", "Pebblegate"),
                    Column.of("country", "Two letters (ISO 3166-1)", "DE"),
                    Column.of("getting_in", "Where the key is, whom to ask", "Invented example: ask at the desk"),
                    Column.of("uplink_down_mbit", "Rate towards the site in Mb/s", "100"),
                    Column.of("uplink_up_mbit", "Rate from the site in Mb/s", "40"),
                    Column.of(
                            "service_hours",
                            "One stretch a line or between semicolons; empty means around the clock",
                            "Mon-Fri 08:00-18:00\nSat 09:00-13:00"),
                    Column.of(
                            "contacts",
                            "One contact a line: name | duty | phone | e-mail",
                            "Reception | front desk | +1-555-0142 | desk@pebblegate.example"))),
    MODELS(
            "models",
            "model",
            List.of(
                    Column.key("maker", "Who makes it; rows match by maker and model", "Tamarack Radio"),
                    Column.key("model", "Its name as the maker writes it", "TR-22"),
                    Column.key("kind", "access point, switch or gateway", "access point"),
                    Column.of("object_id", "The sysObjectID that it answers with", ""),
                    Column.of("radios", "How many, 0 to 8; empty means 0", "2"),
                    Column.of("streams", "Spatial streams of the strongest radio, 1 to 16", "2"),
                    Column.of("bands_ghz", "Bands, out of 2.4, 5, 6, 60", "2.4,5"),
                    Column.of("antenna", "internal, external (connectors), or empty", "internal"),
                    Column.of("outdoor", "yes or no; empty means no", "no"),
                    Column.of("poe_class", "0 to 8 (IEEE 802.3); empty for mains or not known", "3"),
                    Column.of("mains", "Fed from the mains: yes or no; empty means no", "no"),
                    Column.of("mount", "What holds it", "ceiling rail"),
                    Column.of("list_price", "Of one piece without tax, such as 189.90", "189.90"),
                    Column.of("currency", "ISO 4217 code; needed with a price", "EUR"),
                    Column.of("firmware_line", "Name of a firmware line that is entered already", ""),
                    Column.of(
                            "warranty",
                            "months, lifetime after sale, lifetime of owner, none; empty where not known",
                            "months"),
                    Column.of(
                            "warranty_from",
                            "purchase, delivery, installation or first seen; with months only",
                            "purchase"),
                    Column.of("warranty_months", "1 to 600; with months and lifetime after sale", "36"),
                    Column.of("warranty_service", "advance, bench, or empty where not known", "advance"),
                    Column.of("end_of_sale", "Last day of sale as 2029-03-31", "2029-03-31"),
                    Column.of(
                            "end_of_sale_source", "Where that stands written; needed with a day", "invented notice 7"),
                    Column.of("end_of_software", "Last day of firmware as 2032-03-31", ""),
                    Column.of("end_of_software_source", "Where that stands written; needed with a day", ""),
                    Column.of("end_of_support", "Last day of any help as 2034-03-31", ""),
                    Column.of("end_of_support_source", "Where that stands written; needed with a day", ""),
                    Column.of("note", "Anything worth knowing", "Invented example: replace this row"))),
    DEVICES(
            "devices",
            "device",
            List.of(
                    Column.key("customer", "Name of its customer", "Pebblegate Dental"),
                    Column.key("site", "Name of its site", "Harbour clinic"),
                    Column.key("device", "Name; rows match by site and device, else by host and port", "Hall AP"),
                    Column.key("kind", "access point, switch or gateway", "access point"),
                    Column.key("host", "IPv4 or IPv6 address, or a host name", "192.0.2.17"),
                    Column.of("port", "UDP port; empty means 161", "161"),
                    Column.key("credentials", "Name of SNMP credentials that are entered already", "pebblegate read"),
                    Column.of("maker", "Maker of the model; may stay empty", ""),
                    Column.of("model", "Name of the model as we know it; may stay empty", ""),
                    Column.of("place", "Room, ceiling or mast", "Invented example: ceiling of the hall"),
                    Column.of("interval_s", "Seconds between two rounds, 10 to 3600; empty means 60", "60"),
                    Column.of("paused", "yes or no; empty means no", "no"))),
    PURCHASES(
            "purchases",
            "purchase",
            List.of(
                    Column.key("customer", "Name of the customer it was bought for", "Pebblegate Dental"),
                    Column.key("serial", "Serial number; rows match by customer and serial", "TR22-000417"),
                    Column.of("site", "Name of the site where it is", "Harbour clinic"),
                    Column.of("device", "Name of the device it is polled as; needs the site", "Hall AP"),
                    Column.of("supplier", "Who sold it", "Invented Supplies"),
                    Column.of("order_number", "Our order", "PO-1042"),
                    Column.of("invoice_number", "Their invoice", "INV-7781"),
                    Column.of("bought_on", "Day as 2026-03-31", "2026-03-31"),
                    Column.of("delivered_on", "Day as 2026-03-31", "2026-04-07"),
                    Column.of("installed_on", "Day as 2026-03-31", "2026-04-20"),
                    Column.of("price", "Of this one piece, such as 189.90", "189.90"),
                    Column.of("currency", "ISO 4217 code; needed with a price", "EUR"),
                    Column.of("note", "Anything worth knowing", "Invented example: replace this row")));

    private final String word;
    private final String one;
    private final List<Column> columns;

    TransferTable(String word, String one, List<Column> columns) {
        this.word = word;
        this.one = one;
        this.columns = columns;
    }

    /**
     * One column.
     *
     * @param needed whether a header without it is refused
     * @param meaning in plain words
     * @param example invented
     */
    public record Column(String name, boolean needed, String meaning, String example) {

        static Column key(String name, String meaning, String example) {
            return new Column(name, true, meaning, example);
        }

        static Column of(String name, String meaning, String example) {
            return new Column(name, false, meaning, example);
        }
    }

    /** In the order in which they are written. */
    public List<Column> columns() {
        return columns;
    }

    /** {@code customers}: on pages, in addresses and as the name of a file. */
    public String word() {
        return word;
    }

    /** {@code customer}: what one row is about. */
    public String one() {
        return one;
    }

    /** The table of that word. */
    public static Optional<TransferTable> of(String word) {
        return Arrays.stream(values()).filter(table -> table.word.equals(word)).findFirst();
    }
}

package org.roundsman.warranty;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.catalogue.WarrantyTerms;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.PurchaseDraft;

/** Invented units, models, purchases and contracts for tests of pure rules. */
final class Invented {

    static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    private Invented() {}

    static UnitModel model(WarrantyTerms terms) {
        return model(terms, null, null, "100.00", "EUR");
    }

    static UnitModel model(WarrantyTerms terms, String endOfSale, String endOfSupport, String price, String currency) {
        return new UnitModel(
                7,
                "Tamarack Radio TR-22",
                Optional.ofNullable(terms),
                Optional.ofNullable(endOfSale).map(LocalDate::parse),
                Optional.ofNullable(endOfSupport).map(LocalDate::parse),
                Optional.ofNullable(price).map(BigDecimal::new),
                price == null ? "" : currency);
    }

    static Purchase purchase(long id, String serial, Long device, String bought, String delivered, String installed) {
        PurchaseDraft facts = new PurchaseDraft(
                serial, null, device, "", "", "", day(bought), day(delivered), day(installed), null, "", "");
        return new Purchase(id, 3, "Saltmarsh Ferry Line", "", "", BERLIN, OptionalLong.empty(), facts);
    }

    private static LocalDate day(String day) {
        return day == null ? null : LocalDate.parse(day);
    }

    /** An access point of that model, with that purchase; first seen on that day. */
    static Unit unit(UnitModel model, Purchase purchase, String firstSeen) {
        return unit(11, 5, "AP 1", model, purchase, firstSeen);
    }

    static Unit unit(long device, long site, String name, UnitModel model, Purchase purchase, String firstSeen) {
        return new Unit(
                OptionalLong.of(device),
                Optional.of(DeviceKind.ACCESS_POINT),
                3,
                "Saltmarsh Ferry Line",
                OptionalLong.of(site),
                "North pier",
                BERLIN,
                name,
                "mast",
                purchase == null ? "TR-" + device : purchase.serial(),
                Optional.ofNullable(model),
                Optional.ofNullable(day(firstSeen)),
                Optional.ofNullable(purchase),
                Optional.empty(),
                Optional.empty());
    }

    /** Bought on that day, under those terms. */
    static Unit bought(String day, WarrantyTerms terms) {
        return unit(model(terms), purchase(1, "TR-1", null, day, null, null), null);
    }

    static WarrantyTerms.Months months(int months, WarrantyTerms.From from) {
        return new WarrantyTerms.Months(months, from, Optional.of(WarrantyTerms.Service.ADVANCE));
    }

    static Contract contract(String number, String from, String to) {
        return new Contract(
                1,
                3,
                "Saltmarsh Ferry Line",
                number,
                "Fernhollow Networks",
                Optional.of(WarrantyTerms.Service.BENCH),
                LocalDate.parse(from),
                LocalDate.parse(to),
                "",
                1);
    }

    /** A unit whose cover ends that day, as of today. */
    static UnitCover ending(long device, long site, String lastDay, String today, UnitModel model) {
        LocalDate last = LocalDate.parse(lastDay);
        LocalDate now = LocalDate.parse(today);
        Unit unit = unit(device, site, "AP " + device, model, null, null);
        Cover cover = new Cover(
                CoverStatus.of(last, now), Optional.of(last), Optional.empty(), java.util.List.of(), Optional.empty());
        return new UnitCover(unit, cover, now);
    }

    static UnitCover withoutEnd(long device, CoverStatus status, String today) {
        Unit unit = unit(device, 5, "AP " + device, model(null), null, null);
        Cover cover = new Cover(status, Optional.empty(), Optional.empty(), java.util.List.of(), Optional.empty());
        return new UnitCover(unit, cover, LocalDate.parse(today));
    }
}
